/** Sentences of what a device keeps, gives out to a file and takes up from one, in English. */
export const KEEP_WORDS = {
  "keep.full":
    "This device is full. What you write now stands on this page alone: free some space, or save it to a file before you leave.",
  "keep.failed":
    "This browser cannot keep what you write. It stands on this page alone: save it to a file before you leave.",
  "keep.again": "Try again",
  "keep.save": "Save unsent work to a file",
  "keep.read": "Take up unsent work from a file",
  "keep.about":
    "The file holds drafts, waiting entries and their photos. Reading it on another device of this estate sends them from there, still signed by who wrote them.",
  "keep.took":
    "Taken up: {entries} {entries|entry|entries}, {drafts} unfinished {drafts|check|checks}, {photos} {photos|photo|photos}. {known} {known|was|were} here already.",
  "keep.nothing": "Nothing in it was new: everything is here already or has been sent.",
  "fault.not-unsent-work": "This is no file of unsent work. One is named roundbook-unsent.",
  "fault.file-too-large": "This file is larger than half a gigabyte.",
  "fault.photo-altered": "{pointer}: this photo is not as it was taken. It was left out.",
  "fault.entry-altered": "{pointer}: this entry is not as it was signed. It was left out.",
  "fault.entry-differs-here":
    "{pointer}: this device has another entry of the same name. Its own was kept.",
  "fault.draft-differs-here":
    "{pointer}: this check was begun on this device too. Its own was kept; finish or throw it away, then read the file again.",
  "fault.draft-not-whole": "{pointer}: this unfinished check is not whole. It was left out.",
} as const;
