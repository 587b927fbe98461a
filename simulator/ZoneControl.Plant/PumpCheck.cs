namespace ZoneControl.Plant;

/// <summary>Finds what is wrong with a circulator.</summary>
internal static class PumpCheck
{
    private const int MostPoints = 100;

    /// <summary>Adds its mistakes.</summary>
    public static void Mistakes(List<string> found, PumpDescription pump)
    {
        int before = found.Count;
        found.AddRange(PumpCurve.Mistakes(pump.Curve));
        RangeCheck.Between(found, "Pump.Speed", pump.Speed, 0.1, 1.5, "of the curve's speed");
        bool curveIsSound = found.Count == before;
        RangeCheck.Between(found, "Pump.PowerW", pump.PowerW, 0, 100_000, "W");
        RangeCheck.Between(found, "Pump.HeatToWaterShare", pump.HeatToWaterShare, 0, 1, "");
        RangeCheck.Between(found, "Pump.MinimumFlowM3s", pump.MinimumFlowM3s, 0, 1, "m³/s", openLow: true);
        RangeCheck.Between(found, "Pump.CasingWaterM3", pump.CasingWaterM3, 1e-6, 1, "m³");
        RangeCheck.Between(found, "Pump.CasingIronKg", pump.CasingIronKg, 0, 1000, "kg");
        RangeCheck.Between(found, "Pump.CasingLossWPerK", pump.CasingLossWPerK, 0, 1000, "W/K");
        if (curveIsSound && pump.Curve[0].HeadM * pump.Speed * pump.Speed > PumpCurve.MostHeadM)
        {
            curveIsSound = false;
            found.Add($"Pump.Speed is {pump.Speed} on a curve from {pump.Curve[0].HeadM} m; expected a head at no flow of at most"
                + $" {PumpCurve.MostHeadM} m at that speed.");
        }

        if (curveIsSound)
        {
            Regulation(found, pump);
            Power(found, pump);
        }
    }

    private static void Regulation(List<string> found, PumpDescription pump)
    {
        if (pump.Regulation is not { } regulation)
        {
            return;
        }

        double shutoff = pump.Curve[0].HeadM * pump.Speed * pump.Speed;
        RangeCheck.Between(found, "Pump.Regulation.SetHeadM", regulation.SetHeadM, 0, shutoff, "m, the head at no flow",
            openLow: true, openHigh: true);
        if (regulation.HeadAtNoFlowM is { } floor)
        {
            RangeCheck.Between(
                found, "Pump.Regulation.HeadAtNoFlowM", floor, 0, regulation.SetHeadM, "m, the set head", openLow: true);
        }

        RangeCheck.Between(found, "Pump.Regulation.LowestSpeed", regulation.LowestSpeed, 0, pump.Speed, "of the curve's speed");
    }

    private static void Power(List<string> found, PumpDescription pump)
    {
        if (pump.PowerByFlow is not { } power)
        {
            return;
        }

        if (power.Count is < 2 or > MostPoints)
        {
            found.Add($"Pump.PowerByFlow has {power.Count} points; expected 2 to {MostPoints}.");
            return;
        }

        var curve = new PumpCurve(pump.Curve);
        for (int i = 0; i < power.Count; i++)
        {
            (double flow, double watts) = (power[i].FlowM3s, power[i].PowerW);
            string place = $"Pump.PowerByFlow[{i}]";
            RangeCheck.Between(found, $"{place}.PowerW", watts, 0, 100_000, "W");
            if (!double.IsFinite(flow) || (i == 0 ? flow != 0 : flow <= power[i - 1].FlowM3s))
            {
                found.Add(i == 0
                    ? $"{place}.FlowM3s is {flow}; expected 0."
                    : $"{place}.FlowM3s is {flow} after {power[i - 1].FlowM3s}; expected flow to rise.");
                continue;
            }

            // Water at 1,000 kg/m³ would be lifted with more power than the pump takes.
            double hydraulic = 1000 * HydraulicRules.StandardGravity * flow * curve.Head(flow, out _);
            if (watts < hydraulic)
            {
                found.Add($"{place}.PowerW is {watts}; expected at least the {hydraulic:F1} W that the water gets at that flow.");
            }
        }
    }
}
