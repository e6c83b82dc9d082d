/** Three short tones when a wait is over. A browser without sound, or one that refuses it, stays silent: the screen says it too. */
export function soundEnd(): void {
  const context = audioContext();
  if (context === null) return;
  for (const [index, hertz] of [880, 880, 1175].entries()) {
    const startS = context.currentTime + index * 0.28;
    const tone = context.createOscillator();
    const volume = context.createGain();
    tone.frequency.value = hertz;
    volume.gain.setValueAtTime(0.0001, startS);
    volume.gain.exponentialRampToValueAtTime(0.5, startS + 0.02);
    volume.gain.exponentialRampToValueAtTime(0.0001, startS + 0.22);
    tone.connect(volume).connect(context.destination);
    tone.start(startS);
    tone.stop(startS + 0.24);
  }
}

let shared: AudioContext | null = null;

function audioContext(): AudioContext | null {
  if (typeof AudioContext === 'undefined') return null;
  shared ??= new AudioContext();
  // Chromium starts it suspended until somebody has pressed a key; that has long happened in a run.
  if (shared.state === 'suspended') shared.resume().catch(() => {});
  return shared;
}
