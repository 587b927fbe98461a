using CsCheck;

namespace ZoneControl.Plant.Tests;

/// <summary>However the time between inputs is cut, every result is the same to the last bit.</summary>
public class PlantModelCutTests
{
    private sealed record Input(int AfterMs, int Valves, bool Pump, bool Heat, int FaultZone, int Fault);

    private static readonly Gen<Input> _anyInput =
        from after in Gen.OneOf(Gen.Int[0, 8_000], Gen.Int[0, 16].Select(i => i * 500))
        from valves in Gen.Int[0, 15]
        from pump in Gen.Frequency((3, Gen.Const(true)), (1, Gen.Const(false)))
        from heat in Gen.Bool
        from zone in Gen.Int[0, 3]
        from fault in Gen.Int[0, 9]
        select new Input(after, valves, pump, heat, zone, fault);

    [Fact]
    public void Cutting_time_anywhere_changes_no_bit_of_the_results()
    {
        Gen.Select(Houses.Any, _anyInput.Array[1, 8], Gen.Int[1, 3_000].Array[1, 40]).Sample((house, inputs, cuts) =>
        {
            var whole = new PlantModel(house);
            var cut = new PlantModel(house);
            int next = 0;
            foreach (Input input in inputs.Append(new Input(20_000, 0, false, false, 0, 9)))
            {
                long to = whole.NowMs + input.AfterMs;
                whole.AdvanceTo(to);
                while (cut.NowMs + cuts[next % cuts.Length] < to)
                {
                    cut.AdvanceTo(cut.NowMs + cuts[next++ % cuts.Length]);
                    Results(cut); // looking must change nothing either
                }

                cut.AdvanceTo(to);
                Assert.Equal(Results(whole), Results(cut));
                Apply(whole, input);
                Apply(cut, input);
                Assert.Equal(Results(whole), Results(cut));
            }
        }, iter: 1_000);
    }

    [Fact]
    public void Results_stay_finite_and_counts_never_fall_in_any_house()
    {
        Gen.Select(Houses.Any, _anyInput.Array[1, 12]).Sample((house, inputs) =>
        {
            var plant = new PlantModel(house);
            double deadhead = 0, hottest = plant.HottestTrappedC;
            foreach (Input input in inputs)
            {
                Apply(plant, input);
                plant.AdvanceTo(plant.NowMs + input.AfterMs);
                Assert.All(Results(plant), r => Assert.True(double.IsFinite(r), $"{r}"));
                Assert.True(plant.DeadheadS >= deadhead && plant.HottestTrappedC >= hottest);
                Assert.True(plant.DeadheadS <= plant.PumpRunS);
                Assert.True(plant.TrappedWaterC <= plant.HottestTrappedC);
                (deadhead, hottest) = (plant.DeadheadS, plant.HottestTrappedC);
            }
        }, iter: 500);
    }

    [Fact]
    public void Stepping_to_the_next_switch_change_lands_on_it()
    {
        Gen.Select(Houses.Any, _anyInput.Array[1, 6]).Sample((house, inputs) =>
        {
            var plant = new PlantModel(house);
            foreach (Input input in inputs)
            {
                Apply(plant, input);
                int before = plant.EndSwitches;
                long next = plant.NextSwitchChangeMs;
                if (next == PlantModel.Never)
                {
                    plant.AdvanceTo(plant.NowMs + 1_000_000);
                    Assert.Equal(before, plant.EndSwitches);
                    continue;
                }

                plant.AdvanceTo(next - 1);
                Assert.Equal(before, plant.EndSwitches);
                plant.AdvanceTo(next);
                Assert.NotEqual(before, plant.EndSwitches);
            }
        }, iter: 500);
    }

    private static void Apply(PlantModel plant, Input input)
    {
        plant.Drive(input.Valves, input.Pump, input.Heat);
        bool fitted = plant.Description.Actuators[input.FaultZone].SwitchMakesAt is not null;
        ActuatorFault? fault = input.Fault switch
        {
            0 => new ActuatorFault { Stuck = true },
            1 => new ActuatorFault { Dead = true },
            2 => new ActuatorFault { Slowness = 3.7 },
            3 when fitted => new ActuatorFault { Switch = SwitchFault.AlwaysMade },
            4 when fitted => new ActuatorFault { Switch = SwitchFault.NeverMakes },
            5 => ActuatorFault.None,
            _ => null,
        };
        if (fault is not null)
        {
            plant.SetFault(input.FaultZone, fault);
        }
    }

    private static double[] Results(PlantModel plant) =>
    [
        plant.NowMs, plant.PumpFlowM3s, plant.BypassFlowM3s, plant.PumpHeadM, plant.TrappedWaterC, plant.HottestTrappedC,
        plant.DeadheadS, plant.DeadheadEvents, plant.PumpStarts, plant.PumpRunS, plant.PumpEnergyWh,
        plant.FirstWarmFlowMs ?? -1, plant.EndSwitches, plant.NextSwitchChangeMs, plant.IsMoving ? 1 : 0,
        .. Enumerable.Range(0, plant.Description.Loops.Count).Select(plant.LoopFlowM3s),
        .. Enumerable.Range(0, plant.Description.Actuators.Count).Select(plant.Travel),
    ];
}
