/** Why something could not be saved: what happened, what is safe, what to do now. */
export const saving = {
  saved: 'Saved on this phone',
  undo: 'Undo',
  undoWhy: 'Undone at once after saving',
  problems: {
    full: 'This phone is full. This entry is not saved; everything before it is. Free some room on the phone, then save again.',
    databaseLost: 'The phone dropped its store. This entry is not saved; everything before it is. Close the app, open it again, then save again.',
    corrupt: 'The store on this phone cannot be read any more. This entry is not saved. Write it on paper, and export from the menu what can still be read.',
    unavailable: 'This browser keeps nothing here (private mode, or storage switched off). Nothing can be recorded. Use an ordinary window, or another phone.',
    newerVersion: 'A newer version of the app is open in another window. This entry is not saved. Close this window and go on in the newer one.',
    contended: 'Another window was saving at the same time. This entry is not saved. Save again.',
    notEnrolled: 'This phone does not belong to a laboratory yet, so nothing can be recorded. Enrol it first.',
    unfit: 'This entry does not fit its form and was not saved. Nothing else is touched. Tell the supervisor the words below.',
    tooLarge: 'This entry is too long to be sent and was not saved. Shorten the text, then save again.',
    fault: 'Saving failed. This entry is not saved; everything before it is. Save again; if it fails again, write it on paper and tell the supervisor.',
  },
}
export type SavingProblem = keyof typeof saving.problems
