"""Density (kg/m³), dynamic (Pa·s) and kinematic viscosity (m²/s), heat capacity (J/kg K) and freezing point (°C) of propylene
glycol in water by the polynomials of A. Melinder, "Properties of Secondary Working Fluids for Indirect Systems", IIR, 2010,
with the coefficients as published in the open-source library CoolProp (MPG.json): powers of (share - 0.307031) across and of
(T - 305.8583 K) down; viscosity's rows give ln(mPa s), there scaled by 1e-3. A second evaluation, written apart from the
plant's, in NumPy. Run `python3 glycol.py MPG.json` with that file at hand."""
import json
import sys

import numpy as np
from numpy.polynomial.polynomial import polyval, polyval2d

data = json.load(open(sys.argv[1]))
for share, celsius in [(0.3, 10), (0.3, 20), (0.3, 35), (0.3, 40), (0.3, 60), (0.5, 10), (0.5, 60), (0.15, 0), (0.6, 80)]:
    y, x = celsius + 273.15 - data["Tbase"], share - data["xbase"]
    rho = polyval2d(y, x, np.array(data["density"]["coeffs"]))
    mu = 1e-3 * np.exp(1e3 * polyval2d(y, x, np.array(data["viscosity"]["coeffs"])))
    cp = polyval2d(y, x, np.array(data["specific_heat"]["coeffs"]))
    freezing = polyval(x, np.array(data["T_freeze"]["coeffs"])[0]) - 273.15
    print(f"{share:.2f} {celsius:3d}  {rho:.4f}  {mu:.6e}  {mu / rho:.6e}  {cp:.3f}  {freezing:.4f}")
