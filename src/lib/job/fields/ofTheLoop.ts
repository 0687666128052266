/** Inputs that describe the loop itself: readings, questions and views do not move it. */
export const OF_THE_LOOP =
  /^(loop|site|coolant|engine|duty|chargeCooler|frontExchanger|hose|pump|feed|reservoir|fans|airPath|soak)\./;
