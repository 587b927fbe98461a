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
        Liquid(found, description);
        RangeCheck.Between(found, "PlantRoomC", description.PlantRoomC, -20, 60, "°C");
        Rules(found, description.Rules);
        PumpCheck.Mistakes(found, description.Pump);
        Pipe(found, "Mains", description.Mains);
        Kv(found, "HeatExchangerKv", description.HeatExchangerKv);
        Lists(found, description);
        if (description.Bypass is { } bypass)
        {
            RangeCheck.Between(found, "Bypass.OpeningPa", bypass.OpeningPa, 0, 1e6, "Pa");
            RangeCheck.Between(found, "Bypass.BandPa", bypass.BandPa, 1, 1e6, "Pa");
            RangeCheck.Between(found, "Bypass.Kvs", bypass.Kvs, 0.001, 1000, "m³/h at 1 bar");
        }

        if (description.FixedBypassKv is { } kv)
        {
            RangeCheck.Between(found, "FixedBypassKv", kv, 0.001, 1000, "m³/h at 1 bar");
        }

        if (description.Bypass is not null && description.Pump.Regulation?.HeadAtNoFlowM < description.Pump.Regulation?.SetHeadM)
        {
            found.Add("Bypass is a spring and Pump.Regulation is in proportion to flow: together they may balance at more than"
                + " one flow; expected constant difference, fixed speed or a fixed bypass.");
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

    private static void Liquid(List<string> found, PlantDescription description)
    {
        double share = description.GlycolShare;
        if (!(share is >= 0 and <= Glycol.MostShare))
        {
            found.Add($"GlycolShare is {share}; expected between 0 and {Glycol.MostShare}, where the mixture's properties are"
                + " known.");
        }
        else if (share == 0)
        {
            RangeCheck.Between(found, "WaterC", description.WaterC, 0, 100, "°C", openLow: true, openHigh: true);
        }
        else
        {
            double freezing = Math.Round(Glycol.FreezingC(share), 1);
            if (!(description.WaterC > freezing && description.WaterC < Glycol.HighestC))
            {
                found.Add($"WaterC is {description.WaterC}; expected more than {freezing} °C, where a share of {share} glycol"
                    + $" begins to freeze, and less than {Glycol.HighestC} °C.");
            }
        }
    }

    private static void Kv(List<string> found, string place, double kv)
    {
        if (!(kv >= 0.001))
        {
            found.Add($"{place} is {kv}; expected at least 0.001 m³/h at 1 bar (infinite for none).");
        }
    }

    private static void Rules(List<string> found, HydraulicRules rules)
    {
        RangeCheck.Between(found, "Rules.Gravity", rules.Gravity, 1, 30, "m/s²");
        if (!Enum.IsDefined(rules.Friction))
        {
            found.Add($"Rules.Friction is {rules.Friction}; expected one of {string.Join(", ", Enum.GetNames<FrictionLaw>())}.");
        }

        if (rules.KinematicViscosity is { } viscosity)
        {
            RangeCheck.Between(found, "Rules.KinematicViscosity", viscosity, 1e-8, 1e-3, "m²/s");
        }
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

            ValveCheck.Balancing(found, $"Manifolds[{i}].Balancing", description.Manifolds[i].Balancing);
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
        RangeCheck.Between(found, $"{place}.OpenDeadTimeS", actuator.OpenDeadTimeS, 0, DayS, "s");
        RangeCheck.Between(found, $"{place}.OpenStrokeS", actuator.OpenStrokeS, 0.001, DayS, "s");
        RangeCheck.Between(found, $"{place}.CloseDeadTimeS", actuator.CloseDeadTimeS, 0, DayS, "s");
        RangeCheck.Between(found, $"{place}.CloseStrokeS", actuator.CloseStrokeS, 0.001, DayS, "s");
        if (actuator.SwitchMakesAt is { } makes)
        {
            RangeCheck.Between(found, $"{place}.SwitchMakesAt", makes, 0, 1, "of the stroke", openLow: true);
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
        ValveCheck.Table(found, $"{place}.ValveTable", loop.ValveTable);
        ValveCheck.Balancing(found, $"{place}.Balancing", loop.Balancing);
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
        RangeCheck.Between(found, $"{place}.LengthM", pipe.LengthM, 0, 10_000, "m");
        RangeCheck.Between(found, $"{place}.InsideDiameterM", pipe.InsideDiameterM, 0.001, 1, "m");
        RangeCheck.Between(found, $"{place}.FittingsK", pipe.FittingsK, 0, 1e6, "");
        if (pipe.InsideDiameterM > 0
            && !(pipe.RoughnessM >= 0 && pipe.RoughnessM / pipe.InsideDiameterM <= Friction.RoughestRelative))
        {
            found.Add($"{place}.RoughnessM is {pipe.RoughnessM}; expected between 0 and {Friction.RoughestRelative} of the inside"
                + $" diameter ({pipe.InsideDiameterM} m).");
        }
    }
}
