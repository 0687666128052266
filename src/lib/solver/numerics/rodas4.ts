/**
 * Coefficients of RODAS, order 4(3), six stages, stiffly accurate and L-stable, in the transformed
 * form of the source (no matrix-vector products), with the weights of its dense output.
 * Source: E. Hairer and G. Wanner, Solving Ordinary Differential Equations II, 2nd ed. 1996, IV.7,
 * first set of coefficients of the code RODAS that goes with the book.
 */
export const RODAS4 = {
  stages: 6,
  gamma: 0.25,
  /** Stage times, share of the step. */
  alpha: [0, 0.386, 0.21, 0.63, 1, 1],
  /** Weights of the time derivative in each stage. */
  gammaSum: [0.25, -0.1043, 0.1035, -0.03620000000000023, 0, 0],
  /** Row i: how earlier stages enter the argument of stage i. */
  a: [
    [],
    [1.544],
    [0.9466785280815826, 0.2557011698983284],
    [3.314825187068521, 2.896124015972201, 0.9986419139977817],
    [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895],
    [1.221224509226641, 6.019134481288629, 12.53708332932087, -0.687886036105895, 1],
  ],
  /** Row i: how earlier stages enter the right-hand side of stage i, over the step. */
  c: [
    [],
    [-5.6688],
    [-2.430093356833875, -0.2063599157091915],
    [-0.1073529058151375, -9.594562251023355, -20.47028614809616],
    [7.496443313967647, -10.24680431464352, -33.99990352819905, 11.7089089320616],
    [
      8.083246795921522, -7.981132988064893, -31.52159432874371, 16.31930543123136,
      -6.058818238834054,
    ],
  ],
  /** Dense output, order 3: weights of the stages in the quadratic and the cubic part. */
  dense2: [
    10.12623508344586, -7.487995877610167, -34.80091861555747, -7.992771707568823,
    1.025137723295662,
  ],
  dense3: [
    -0.6762803392801253, 6.087714651680015, 16.43084320892478, 24.76722511418386,
    -6.594389125716872,
  ],
} as const;
