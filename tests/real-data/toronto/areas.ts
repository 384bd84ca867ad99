/** Columns of the city's twenty graded areas, and what the city calls them. */
export const AREAS = {
  ENTRANCE_LOBBY: "Entrance lobby",
  ENTRANCE_DOORS_WINDOWS: "Entrance doors and windows",
  SECURITY: "Security",
  STAIRWELLS: "Stairwells",
  LAUNDRY_ROOMS: "Laundry rooms",
  INTERNAL_GUARDS_HANDRAILS: "Internal guards and handrails",
  GARBAGE_CHUTE_ROOMS: "Garbage chute rooms",
  GARBAGE_BIN_STORAGE_AREA: "Garbage bin storage area",
  ELEVATORS: "Elevators",
  STORAGE_AREAS_LOCKERS: "Storage areas and lockers",
  INTERIOR_WALL_CEILING_FLOOR: "Interior walls, ceilings and floors",
  INTERIOR_LIGHTING_LEVELS: "Interior lighting levels",
  GRAFFITI: "Graffiti",
  EXTERIOR_CLADDING: "Exterior cladding",
  EXTERIOR_GROUNDS: "Exterior grounds",
  EXTERIOR_WALKWAYS: "Exterior walkways",
  BALCONY_GUARDS: "Balcony guards",
  WATER_PEN_EXT_BLDG_ELEMENTS: "Water penetration of exterior elements",
  PARKING_AREA: "Parking area",
  OTHER_FACILITIES: "Other facilities",
} as const;

export const pointOf = (column: string): string => column.toLowerCase();
