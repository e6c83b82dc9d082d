/** In a new house the builder stands where the owner should, and the window runs from the transfer of title. */

export type NewHouseParties = {
  readonly buildingType: 'home' | 'rental' | 'new-build' | 'commercial';
  readonly ownerId: string | null;
  readonly builderId: string | null;
  readonly occupantId: string | null;
  readonly titleTransferOn: string | null;
};

export type OwnerProblem = {
  readonly code: 'owner-is-builder';
  readonly askFor: readonly ('owner' | 'occupant' | 'title-transfer')[];
};

export function ownerIsBuilder(house: NewHouseParties): OwnerProblem | null {
  if (house.buildingType !== 'new-build') return null;
  const isBuilder = house.ownerId !== null && house.ownerId === house.builderId;
  const askFor = [
    ...(house.ownerId === null || (isBuilder && house.titleTransferOn !== null) ? (['owner'] as const) : []),
    ...(isBuilder && house.occupantId === null ? (['occupant'] as const) : []),
    ...(isBuilder && house.titleTransferOn === null ? (['title-transfer'] as const) : []),
  ];
  return askFor.length > 0 ? { code: 'owner-is-builder', askFor } : null;
}
