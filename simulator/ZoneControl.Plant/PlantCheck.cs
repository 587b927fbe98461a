namespace ZoneControl.Plant;

/// <summary>Finds every value of a description that the plant cannot use.</summary>
public static class PlantCheck
{
    /// <summary>Most zones: one bit each in a mask of inputs.</summary>
    public const int MostZones = 31;

    private const double DayS = 86_400;

    /// <summary>One sentence a mistake: the value's place, what was found, what is expected; none when all is well.</summary>
    public static IReadOnlyList<string> Mistakes(PlantDescription description)
    {
        ArgumentNullException.ThrowIfNull(description);
        var found = new List<string>();
        Between(found, "WaterC", description.WaterC, 0, 100, "°C", openLow: true, openHigh: true);
        Between(found, "PlantRoomC", description.PlantRoomC, -20, 60, "°C");
        Rules(found, description.Rules);
        Pump(found, description.Pump);
        Pipe(found, "Mains", description.Mains);
        Lists(found, description);
        if (description.Bypass is { } bypass)
        {
            Between(found, "Bypass.OpeningPa", bypass.OpeningPa, 0, 1e6, "Pa");
            Between(found, "Bypass.BandPa", bypass.BandPa, 1, 1e6, "Pa");
            Between(found, "Bypass.Kvs", bypass.Kvs, 0.001, 1000, "m³/h at 1 bar");
        }

        return found;
    }

    /// <summary>Refuses a description with mistakes.</summary>
    /// <exception cref="ArgumentException">There is at least one; the message holds them all, a line each.</exception>
    public static void Demand(PlantDescription description)
    {
        IReadOnlyList<string> mistakes = Mistakes(description);
        if (mistakes.Count > 0)
        {
            throw new ArgumentException(string.Join(Environment.NewLine, mistakes), nameof(description));
        }
    }

    private static void Rules(List<string> found, HydraulicRules rules)
    {
        Between(found, "Rules.Gravity", rules.Gravity, 1, 30, "m/s²");
        if (!Enum.IsDefined(rules.Friction))
        {
            found.Add($"Rules.Friction is {rules.Friction}; expected one of {string.Join(", ", Enum.GetNames<FrictionLaw>())}.");
        }

        if (rules.KinematicViscosity is { } viscosity)
        {
            Between(found, "Rules.KinematicViscosity", viscosity, 1e-8, 1e-3, "m²/s");
        }
    }

    private static void Pump(List<string> found, PumpDescription pump)
    {
        found.AddRange(PumpCurve.Mistakes(pump.Curve));
        Between(found, "Pump.PowerW", pump.PowerW, 0, 100_000, "W");
        Between(found, "Pump.MinimumFlowM3s", pump.MinimumFlowM3s, 0, 1, "m³/s", openLow: true);
        Between(found, "Pump.CasingWaterM3", pump.CasingWaterM3, 1e-6, 1, "m³");
        Between(found, "Pump.CasingIronKg", pump.CasingIronKg, 0, 1000, "kg");
        Between(found, "Pump.CasingLossWPerK", pump.CasingLossWPerK, 0, 1000, "W/K");
    }

    private static void Lists(List<string> found, PlantDescription description)
    {
        if (description.Manifolds.Count == 0)
        {
            found.Add("Manifolds has no entry; expected at least one.");
        }

        if (description.Loops.Count == 0)
        {
            found.Add("Loops has no entry; expected at least one.");
        }

        if (description.Actuators.Count > MostZones)
        {
            found.Add($"Actuators has {description.Actuators.Count} entries; expected at most {MostZones}.");
        }

        for (int i = 0; i < description.Manifolds.Count; i++)
        {
            if (description.Manifolds[i].Branch is { } branch)
            {
                Pipe(found, $"Manifolds[{i}].Branch", branch);
            }
        }

        for (int i = 0; i < description.Actuators.Count; i++)
        {
            Actuator(found, $"Actuators[{i}]", description.Actuators[i]);
        }

        for (int i = 0; i < description.Loops.Count; i++)
        {
            Loop(found, $"Loops[{i}]", description.Loops[i], description);
        }
    }

    private static void Actuator(List<string> found, string place, ActuatorDescription actuator)
    {
        Between(found, $"{place}.OpenDeadTimeS", actuator.OpenDeadTimeS, 0, DayS, "s");
        Between(found, $"{place}.OpenStrokeS", actuator.OpenStrokeS, 0.001, DayS, "s");
        Between(found, $"{place}.CloseDeadTimeS", actuator.CloseDeadTimeS, 0, DayS, "s");
        Between(found, $"{place}.CloseStrokeS", actuator.CloseStrokeS, 0.001, DayS, "s");
        if (actuator.SwitchMakesAt is { } makes)
        {
            Between(found, $"{place}.SwitchMakesAt", makes, 0, 1, "of the stroke", openLow: true);
            if (!(actuator.SwitchHysteresis >= 0 && actuator.SwitchHysteresis <= makes))
            {
                found.Add($"{place}.SwitchHysteresis is {actuator.SwitchHysteresis}; expected between 0 and SwitchMakesAt"
                    + $" ({makes}), or the switch would never break.");
            }
        }
    }

    private static void Loop(List<string> found, string place, LoopDescription loop, PlantDescription description)
    {
        if (loop.Zone < -1 || loop.Zone >= description.Actuators.Count)
        {
            found.Add($"{place}.Zone is {loop.Zone}; expected one of {description.Actuators.Count} zones counted from 0,"
                + " or -1 for a loop without an actuator.");
        }

        if (description.Manifolds.Count > 0 && (loop.Manifold < 0 || loop.Manifold >= description.Manifolds.Count))
        {
            found.Add($"{place}.Manifold is {loop.Manifold}; expected one of {description.Manifolds.Count} manifolds"
                + " counted from 0.");
        }

        Pipe(found, $"{place}.Tube", loop.Tube);
        if (!(loop.ValveKvs >= 0.001))
        {
            found.Add($"{place}.ValveKvs is {loop.ValveKvs}; expected at least 0.001 m³/h at 1 bar (infinite for no valve).");
        }
        else if (loop.ValveKvs > 1e6 && loop.Tube is { LengthM: < 0.001, FittingsK: < 0.001 })
        {
            found.Add($"{place} resists nothing: no length, no fittings and no valve; expected at least one of them.");
        }
    }

    private static void Pipe(List<string> found, string place, PipeDescription pipe)
    {
        Between(found, $"{place}.LengthM", pipe.LengthM, 0, 10_000, "m");
        Between(found, $"{place}.InsideDiameterM", pipe.InsideDiameterM, 0.001, 1, "m");
        Between(found, $"{place}.FittingsK", pipe.FittingsK, 0, 1e6, "");
        if (pipe.InsideDiameterM > 0
            && !(pipe.RoughnessM >= 0 && pipe.RoughnessM / pipe.InsideDiameterM <= Friction.RoughestRelative))
        {
            found.Add($"{place}.RoughnessM is {pipe.RoughnessM}; expected between 0 and {Friction.RoughestRelative} of the inside"
                + $" diameter ({pipe.InsideDiameterM} m).");
        }
    }

    private static void Between(
        List<string> found, string place, double value, double low, double high, string unit,
        bool openLow = false, bool openHigh = false)
    {
        // Written so that NaN falls through to the message.
        if (value >= low && value <= high && !(openLow && value == low) && !(openHigh && value == high))
        {
            return;
        }

        string from = openLow ? $"more than {low}" : $"at least {low}";
        string to = openHigh ? $"less than {high}" : $"at most {high}";
        found.Add($"{place} is {value}; expected {from} and {to}{(unit.Length > 0 ? " " + unit : "")}.");
    }
}
