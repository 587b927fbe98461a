namespace ZoneControl.Bench.Boards;

/// <summary>Cautions that go with every board. They are no advice on how to do the work of those they name.</summary>
public static class BoardCautions
{
    /// <summary>All of them, a sentence or two each.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Mains voltage and pump circuits are the work of a licensed electrician, under the local code.",
        "Keep the low-voltage side (Class 2 or SELV) apart from mains: separate cables, separate compartments, relays with "
            + "reinforced insulation between coil and contacts.",
        "The heat source's own limits, relief valves and safety devices stay in charge. ZoneControl is supervisory: it is no "
            + "safety device, nothing here is certified, and it may fail.",
        "Prove the board on lamps and switches (hardware-notes/bench-rig.md) before a pump or a valve is wired to it.",
    ];
}
