/** Blocks of points, which several checklists take in. */
export const BLOCK_WORDS = {
  "list.title": "Blocks of points",
  "list.about":
    "Points that several checklists take in. A change is in every draft at once, and in a checklist from its next issue.",
  "list.used": "in {titles}",
  "list.unused": "in no checklist yet",
  "list.draft": "{title} (draft)",
  "list.issue": "{title} (issue {issue})",
  "sheet.about": "Kept as revision {revision}. Its name stays; issued checklists stay as they are.",
  "sheet.label": "Block",
  "sheet.keep": "Keep it",
  "sheet.changed":
    "This block was kept elsewhere meanwhile, as revision {revision}. What you wrote stands here still.",
  "sheet.remove": "Remove the block",
  "verb.takes-in": "takes in",
  "include.none": "no block",
  "include.blocks": "the {count|block|blocks} {titles}",
  "include.label": "Blocks whose points it takes in",
  "include.said": "It takes in: {titles}.",
  "group.from": "block “{title}”",
  "group.keep": "Keep this group as a block",
  "group.keep-about":
    "Other checklists can take the block in. Its points belong to the block then: what they found so far is compared no further.",
} as const;
