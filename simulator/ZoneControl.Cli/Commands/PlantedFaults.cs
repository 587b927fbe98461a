using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Seasons;
using ZoneControl.Plant;

namespace ZoneControl.Cli.Commands;

/// <summary>Reads the faults that somebody wants planted in a commissioning run.</summary>
internal static class PlantedFaults
{
    private static readonly string[] _kinds = ["stuck", "dead", "no-switch", "lying-switch", "actuators", "switches", "pump"];

    private static readonly (string Word, PumpWiring Wiring)[] _pumps =
    [
        ("unconnected", PumpWiring.Unconnected), ("always", PumpWiring.Always), ("inverted", PumpWiring.Inverted), ("on-heat", PumpWiring.OnHeat),
    ];

    /// <summary>The installation with those faults.</summary>
    /// <exception cref="BadInputException">One is not known, or the house has not what it names.</exception>
    public static Installation Read(House house, IEnumerable<string> faults)
    {
        Installation installation = Installation.Sound;
        var own = new Dictionary<int, ActuatorFault>();
        foreach (string text in faults)
        {
            string[] parts = text.Split('=', 2);
            if (parts.Length < 2 || !_kinds.Contains(parts[0]))
                throw new BadInputException(Words.Unknown("fault", parts[0], _kinds) + " Each is written fault=zone.");
            installation = parts[0] switch
            {
                "actuators" => installation with { SwappedActuators = Pair(house, parts[1], text, mustHaveSwitches: false) },
                "switches" => installation with { SwappedSwitches = Pair(house, parts[1], text, mustHaveSwitches: true) },
                "pump" => Pump(house, installation, parts[1]),
                _ => installation,
            };
            if (OwnFault(parts[0]) is { } fault)
            {
                int zone = Zone(house, parts[1], fault.Switch != SwitchFault.None, text);
                ActuatorFault before = own.GetValueOrDefault(zone, ActuatorFault.None);
                own[zone] = before with
                {
                    Stuck = before.Stuck || fault.Stuck,
                    Dead = before.Dead || fault.Dead,
                    Switch = fault.Switch != SwitchFault.None ? fault.Switch : before.Switch,
                };
            }
        }

        return installation with { Actuators = own };
    }

    private static ActuatorFault? OwnFault(string word) => word switch
    {
        "stuck" => new ActuatorFault { Stuck = true },
        "dead" => new ActuatorFault { Dead = true },
        "no-switch" => new ActuatorFault { Switch = SwitchFault.NeverMakes },
        "lying-switch" => new ActuatorFault { Switch = SwitchFault.AlwaysMade },
        _ => null,
    };

    private static Installation Pump(House house, Installation installation, string word)
    {
        foreach ((string known, PumpWiring wiring) in _pumps)
        {
            if (word == known)
                return installation with { Pump = wiring };
        }

        if (house.ZoneIndex(word) is >= 0 and var zone)
            return installation with { Pump = PumpWiring.OnValve, PumpZone = zone };
        throw new BadInputException(Words.Unknown("pump fault or zone", word,
            [.. _pumps.Select(pump => pump.Word), .. house.Zones.Select(z => z.Name)]));
    }

    private static (int A, int B) Pair(House house, string words, string text, bool mustHaveSwitches)
    {
        string[] names = words.Split(',');
        if (names.Length != 2)
            throw new BadInputException($"--fault: found \"{text}\", expected two zones with a comma between, such as actuators=bath,shop");
        (int a, int b) = (Zone(house, names[0], mustHaveSwitches, text), Zone(house, names[1], mustHaveSwitches, text));
        return a == b ? throw new BadInputException($"--fault: found \"{text}\", expected two different zones") : (a, b);
    }

    private static int Zone(House house, string name, bool mustHaveSwitch, string text)
    {
        int zone = house.ZoneIndex(name.Trim());
        if (zone < 0)
            throw new BadInputException(Words.Unknown("zone", name.Trim(), [.. house.Zones.Select(z => z.Name)]));
        return mustHaveSwitch && !house.Zones[zone].Actuator.HasSwitch
            ? throw new BadInputException($"--fault: found \"{text}\", expected a zone whose actuator has an end switch")
            : zone;
    }
}
