"""Writes friction.json: Darcy friction factors by the open-source library `fluids`, for the plant's tests.
Run `python3 friction.py > friction.json` with that library installed (1.0.22 was used)."""
import json

import fluids
from fluids.friction import Colebrook, Swamee_Jain_1976

rows = [
    [reynolds, roughness, Colebrook(reynolds, roughness), Swamee_Jain_1976(reynolds, roughness)]
    for reynolds in (4000, 4500, 6000, 1e4, 2.3e4, 5e4, 1e5, 7e5, 1e6, 1e7, 1e8)
    for roughness in (0, 1e-6, 1.2176e-4, 6e-4, 2e-3, 1e-2, 0.05)
]
print(json.dumps({"made_by": f"friction.py, fluids {fluids.__version__}",
                  "columns": ["Reynolds number", "relative roughness", "Colebrook", "Swamee and Jain"],
                  "rows": rows}).replace("], [", "],\n ["))
