"""R-C networks advanced by SciPy's matrix exponential: writes rc.json. Made with SciPy 1.10.1 and NumPy 1.24.2.

C dT/dt = -K T + b, K with links between bodies and outward conductances on its diagonal. The step is exact: with the column b
added, expm([[A, f], [0, 0]] t) gives T(t). Networks are chains of floors and rooms on one body of water, with invented values.
"""
import json
import numpy as np
from scipy.linalg import expm

rng = np.random.default_rng(20)


def network(rooms):
    n = 1 + 2 * rooms
    capacity = [float(rng.uniform(4e4, 1e6))]
    outward = [float(rng.uniform(1, 6))]
    links = []
    for _ in range(rooms):
        floor = len(capacity)
        capacity += [float(rng.uniform(5e5, 8e6)), float(rng.uniform(3e5, 5e6))]
        outward += [float(rng.uniform(2, 20)), float(rng.uniform(8, 80))]
        links.append([0, floor, float(rng.uniform(20, 400))])
        links.append([floor, floor + 1, float(rng.uniform(40, 300))])
    start = [float(rng.uniform(5, 40)) for _ in range(n)]
    heat = [float(outward[i] * rng.uniform(-10, 20) + (rng.uniform(0, 9000) if i == 0 else rng.uniform(0, 200))) for i in range(n)]
    return dict(capacityJPerK=capacity, outwardWPerK=outward, links=links, startC=start, heatW=heat)


def reference(net, seconds):
    n = len(net["capacityJPerK"])
    k = np.diag(net["outwardWPerK"]).astype(float)
    for a, b, g in net["links"]:
        k[a, a] += g
        k[b, b] += g
        k[a, b] -= g
        k[b, a] -= g
    c = np.array(net["capacityJPerK"])
    m = np.zeros((n + 1, n + 1))
    m[:n, :n] = -k / c[:, None]
    m[:n, n] = np.array(net["heatW"]) / c
    return [float(x) for x in (expm(m * seconds) @ np.append(net["startC"], 1.0))[:n]]


networks = []
for rooms in (0, 1, 2, 6, 16):
    net = network(rooms)
    net["steps"] = [dict(seconds=s, celsius=reference(net, s)) for s in (0.1, 1, 60, 3600, 86400, 864000)]
    networks.append(net)
json.dump(dict(source="scipy.linalg.expm", networks=networks), open("rc.json", "w"), indent=1)
