/*
 * Plays a disk that keeps only what was synced. Loaded before the C library (LD_PRELOAD, Linux): whenever a file under
 * $LIGHTOFF_CUT_FOLDER is synced, its bytes of that moment are copied to $LIGHTOFF_CUT_KEPT under the same name. Names that
 * change are kept once their folder is synced. What lies there after a kill is what a power cut would have left at least.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define MOST_RENAMES 64

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static struct { char from[PATH_MAX]; char to[PATH_MAX]; } pending[MOST_RENAMES];
static int pending_count = 0;

/* The path below the watched folder; NULL: not there. */
static const char *watched(const char *path) {
  const char *folder = getenv("LIGHTOFF_CUT_FOLDER");
  if (folder == NULL || getenv("LIGHTOFF_CUT_KEPT") == NULL || path == NULL) return NULL;
  size_t length = strlen(folder);
  if (strncmp(path, folder, length) != 0) return NULL;
  return path[length] == '/' ? path + length + 1 : path[length] == '\0' ? "" : NULL;
}

static void kept_path(char *out, const char *below) {
  snprintf(out, PATH_MAX, "%s/%s", getenv("LIGHTOFF_CUT_KEPT"), below);
}

static void make_folders(char *path) {
  for (char *at = strchr(path + 1, '/'); at != NULL; at = strchr(at + 1, '/')) {
    *at = '\0';
    mkdir(path, 0777);
    *at = '/';
  }
}

static void keep(int from, const char *below) {
  char path[PATH_MAX], half[PATH_MAX + 8];
  kept_path(path, below);
  make_folders(path);
  snprintf(half, sizeof half, "%s.half", path);
  int to = open(half, O_WRONLY | O_CREAT | O_TRUNC, 0666);
  if (to < 0) abort();
  static char buffer[1 << 20];
  off_t at = 0;
  ssize_t got;
  while ((got = pread(from, buffer, sizeof buffer, at)) > 0) {
    if (write(to, buffer, (size_t)got) != got) abort();
    at += got;
  }
  close(to);
  int (*real)(const char *, const char *) = dlsym(RTLD_NEXT, "rename");
  if (real(half, path) != 0) abort();
}

static void keep_names(void) {
  int (*real)(const char *, const char *) = dlsym(RTLD_NEXT, "rename");
  for (int index = 0; index < pending_count; index++) {
    char from[PATH_MAX], to[PATH_MAX];
    kept_path(from, pending[index].from);
    kept_path(to, pending[index].to);
    make_folders(to);
    real(from, to);
  }
  pending_count = 0;
}

static void synced(int fd) {
  char link[64], path[PATH_MAX];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, sizeof path - 1);
  if (length <= 0) return;
  path[length] = '\0';
  const char *below = watched(path);
  struct stat about;
  if (below == NULL || fstat(fd, &about) != 0) return;
  pthread_mutex_lock(&lock);
  if (S_ISDIR(about.st_mode)) keep_names();
  else if (S_ISREG(about.st_mode)) {
    /* The file may be open for writing only. */
    int from = open(path, O_RDONLY);
    if (from >= 0) {
      keep(from, below);
      close(from);
    }
  }
  pthread_mutex_unlock(&lock);
}

int fsync(int fd) {
  synced(fd);
  return 0;
}

int fdatasync(int fd) {
  synced(fd);
  return 0;
}

int rename(const char *from, const char *to) {
  int (*real)(const char *, const char *) = dlsym(RTLD_NEXT, "rename");
  int result = real(from, to);
  const char *below_from = watched(from), *below_to = watched(to);
  if (result == 0 && below_from != NULL && below_to != NULL) {
    pthread_mutex_lock(&lock);
    if (pending_count == MOST_RENAMES) abort();
    strncpy(pending[pending_count].from, below_from, PATH_MAX - 1);
    strncpy(pending[pending_count].to, below_to, PATH_MAX - 1);
    pending_count++;
    pthread_mutex_unlock(&lock);
  }
  return result;
}

int unlink(const char *path) {
  int (*real)(const char *) = dlsym(RTLD_NEXT, "unlink");
  int result = real(path);
  const char *below = watched(path);
  if (result == 0 && below != NULL) {
    char kept[PATH_MAX];
    kept_path(kept, below);
    real(kept);
  }
  return result;
}
