/** Words of the page around the letter: what the reader can change, ask and take along. */
export const pageWords = {
  blankName: 'a café',
  blankHeading: 'An empty letter',
  blankLead:
    'How many cups, glasses, saucers and spoons does the café need? Answer a few questions, and this letter tells you.',

  // At the head.
  readAs: 'Read this letter as',
  readers: { owner: 'owner', consultant: 'consultant', trainer: 'trainer' },
  unitsLabel: 'Lengths and weights in',
  units: { metric: 'mm, ml, g', us: 'in, fl oz, lb' },
  localeLabel: 'Numbers and money as written in',
  localeOfScenario: 'as the scenario says',
  lookSummary: 'How this letter is written',
  senderLabel: 'Your name or firm, for the head of the letter',
  logoLabel: 'Your logo (PNG, JPEG or SVG, at most 200 kB)',
  logoTooLarge: 'This picture is larger than 200 kB; take a smaller one.',
  logoNone: 'This file is not a PNG, JPEG or SVG picture.',
  logoRemove: 'Remove the logo',
  logoAlt: 'Logo of the sender',

  // How far the answer has come.
  asSent:
    'This is the answer as it was sent. Change a number below, and this page works it out again, without a network.',
  working: 'Working it out …',
  provisional: (days: string, fresh: string): string =>
    `Chosen on ${days} simulated days and checked on ${fresh} others; the final answer follows.`,
  provisionalAtStock: (days: string): string =>
    `Checked on ${days} simulated days; the answer on more days follows.`,
  progress: (days: string): string => `${days} days run so far.`,
  certified: (days: string, fresh: string): string =>
    `Worked out here: chosen on ${days} simulated days, tested on ${fresh} others.`,
  certifiedAtStock: (days: string): string =>
    `Worked out here: this stock was tested on ${days} simulated days.`,
  onListed: (days: string): string => `Worked out here, on the days you listed (${days}).`,
  mistakesHead:
    'This cannot be worked out yet. The answer above is the one from before the change.',
  mistakeAt: (line: string | null, path: string): string =>
    [...(line === null ? [] : [`Line ${line}`]), ...(path === '' ? [] : [path])].join(', '),
  fault: (message: string): string =>
    `Something went wrong on our side: ${message}. What you typed is kept; change a number to try again.`,

  provisionalMark: 'Provisional.',
  provisionalTitle: 'PROVISIONAL:',
  waiting: 'Saving or printing starts when the final answer is ready.',
  waitingForSections: 'Printing starts when the sections that stand open are worked out.',
  cancel: 'Cancel',
  noScript:
    'This letter can be read as it is. To change numbers in it, open it in a browser that runs scripts.',
  asleep:
    'This letter can be read as it is, but this browser is too old, or its settings are too strict, to change numbers in it. A current Chrome, Edge, Firefox or Safari can.',

  // The boxes of the first view.
  boxesHead: 'Your café',
  six: {
    guests: 'Guests, busiest hour',
    seats: 'Seats',
    stay: 'Guests stay (mean, min)',
    staysIn: 'Share staying in',
    clearing: 'Tables cleared every',
    level: 'Safe on … of days',
  },
  machines: 'Dishwashers',
  machinesWrong: (most: string): string =>
    `Type a whole number from 1 to ${most}. The answer is still the one before.`,
  levelWrong:
    'Type a share from 1 % to 99.99 %, such as 95 %. No stock is safe on 100 % of days. The answer is still the one before.',
  positiveWrong: 'Type one number above 0, such as 25. The answer is still the one before.',
  asManyAsNeeded: 'as many as needed',
  clearedAtOnce: 'at once, as guests leave',

  // What a change did.
  changedValue: (label: string, from: string, to: string): string => `${label} ${from} → ${to}`,
  changedMore: (count: string): string => `${count} more`,
  changedNothing: 'the same stock as before',
  changedProvisional: '(provisional)',
  changedStock: (share: string, wanted: string): string =>
    `With the previous stock, ${share} of days would be safe, not ${wanted}.`,
  changedSafety: (from: string, to: string): string => `safe days ${from} → ${to}`,
  nothingThere: 'none',
  undo: 'Undo',
  keepAlternative: 'Keep as an alternative',
  backToSent: 'Back to the letter as sent',

  // Pieces.
  piecesHead: 'Your own numbers',
  piecesIntro: 'Type how many you have, or want to buy, and the letter says how safe that is.',
  piecesWrong: (most: string): string =>
    `Type a whole number from 0 to ${most}. The answer is still the one before.`,
  piecesBack: 'Back to the numbers needed',

  // Further questions.
  questionsHead: 'Ask more of this letter',
  askAgain: 'Work it out',
  workingDays: (days: string, most: string | null, left: string | null): string =>
    most === null
      ? `Working it out: ${days} days run so far.`
      : `Working it out: ${days} of up to ${most} days${left === null ? '' : `, up to ${left} left`}.`,

  walkHead: 'Walk through a day on the floor',

  // Forms.
  formsHead: 'Change anything',
  formsBoxes: 'All inputs, in boxes',
  formsText: 'The whole scenario file, as text',

  // Files.
  filesHead: 'Save and print',
  filesIntro: 'Everything stays on this machine: nothing is sent anywhere.',
  openScenario: 'Open a scenario file (YAML or JSON)',
  tooLarge: 'This file is larger than 1 MB, too large for a scenario.',
  isLetter: 'This is a web page. If it is a saved letter, open it by itself in the browser.',
  saveScenario: 'Save the scenario',
  saveAnswer: 'Save the answer (JSON)',
  saveLetter: 'Save this letter',
  saveWorkbook: 'Save the order sheet (XLSX)',
  print: 'Print this letter',
  savePicture: 'Save',
  pictureSvg: 'Save as SVG',
  picturePng: 'Save as PNG',
  tableCsv: 'Save the figures as CSV',

  restore: (when: string): string =>
    `You changed this letter on ${when} and did not save it. Your browser kept the changes.`,
  restoreTake: 'Continue with them',
  restoreDrop: 'Discard them',
  besideLabel: 'Two saved letters side by side: choose both, or drop both here',
  besideNone:
    'Choose two letters that were saved here (HTML files), or one to compare with this letter.',
  besideHere: 'this letter',
  besideAnswers: 'What the two letters answer',
  besideInputs: 'Inputs that differ',
  besideSame: 'All inputs are the same.',
  besideCost: 'Cost of all pieces',
  besideSafe: 'Safe days',

  // Beginning.
  startHead: 'Begin',
  startWith: 'Begin with an example',
  startButton: 'Write the letter',
  house: {
    guests: (guests: string): string => `${guests} guests in the busiest hour`,
    seats: (seats: string): string => `${seats} seats`,
    anySeats: 'as many seats as needed',
    machines: (machines: string, one: boolean): string =>
      `${machines} ${one ? 'dishwasher' : 'dishwashers'}`,
    anyMachines: 'as many dishwashers as needed',
  },
  startOver: 'Back to the usual answers',
  startAgain: 'Begin again: the questions, with your answers',
  startAgainMeans:
    'Other answers write a new letter, without the changes you have made below since. Undo brings them back.',

  // Cards.
  cardsHead: 'Cards for the staff',
  cardsIntro: 'One page each, to hang beside the machine. They show the results of this letter.',
  cardsShow: 'Show the cards',
  cardsHide: 'Hide the cards',
  paper: 'Paper',
  papers: { a4: 'A4', letter: 'US Letter' },
  cardsPrint: 'Print all cards',
};
