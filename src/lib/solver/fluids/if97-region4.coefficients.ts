/** IAPWS R7-97(2012), Table 34: n1 to n10 of the saturation line (pressure in MPa, temperature in K). */
export const REGION_4 = {
  n1: 0.11670521452767e4,
  n2: -0.72421316703206e6,
  n3: -0.17073846940092e2,
  n4: 0.1202082470247e5,
  n5: -0.32325550322333e7,
  n6: 0.1491510861353e2,
  n7: -0.48232657361591e4,
  n8: 0.40511340542057e6,
  n9: -0.23855557567849,
  n10: 0.65017534844798e3,
} as const;
