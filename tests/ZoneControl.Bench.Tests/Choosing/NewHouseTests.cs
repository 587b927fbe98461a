using CsCheck;
using ZoneControl.Bench.Choosing;
using ZoneControl.Bench.Choosing.NewHouses;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Tests.Choosing;

public class NewHouseTests
{
    private static readonly HouseAnswers _small = new()
    {
        Name = "A \"small\" house",
        Zones = [new("Küche", "two-wire", null, ["80 m", "75 m"]), new("Bath", "four-wire", "2 min", ["60 m"]), new("Bath", "four-wire", "2 min", ["55 m"])],
        Contacts = ["season", "reset", "service"],
        Transformer = "60 VA",
    };

    [Fact]
    public void A_new_file_is_read_without_a_mistake_and_says_what_was_answered()
    {
        NewHouse made = HouseWriter.Write(_small, "new.house.toml");
        Assert.Empty(made.Mistakes);
        House house = made.House!;
        Assert.Equal("A \"small\" house", house.Name);
        Assert.Equal(["kueche", "bath", "bath-2"], house.Zones.Select(zone => zone.Name));
        Assert.Equal(TimeSpan.FromMinutes(2), house.Zones[1].Actuator.OpeningTime);
        Assert.Same(house.Zones[1].Actuator.Name, house.Zones[2].Actuator.Name);
        Assert.True(house.Contacts.Service);
        Assert.Equal(60, house.Transformer!.RatingVa);
    }

    [Fact]
    public void Minimum_open_is_reckoned_so_that_check_finds_it_fine()
    {
        House house = HouseWriter.Write(_small with { MinimumFlow = "6 L/min" }, "new.house.toml").House!;
        Assert.True(house.Controller.MinimumOpen > 1);
        Finding finding = Assert.Single(HouseCheck.Of(house, new CheckAssumptions()).Findings, f => f.Topic == "minimum open");
        Assert.Equal(FindingKind.Fine, finding.Kind);
    }

    [Fact]
    public void Whatever_can_be_answered_makes_a_file_that_is_read()
    {
        static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);
        Gen<string> length = Gen.Int[10, 120].Select(m => $"{m} m");
        Gen<ZoneAnswers> zone = Gen.Select(
            OneOf("Den", "Nook", "Große Stube", "7th room", "!"), OneOf("two-wire", "four-wire", "motorised", "motorised with switch"),
            OneOf<string?>(null, "90 s", "5 min"), length.Array[1, 3], (name, kind, opening, loops) => new ZoneAnswers(name, kind, opening, loops));
        Gen<HouseAnswers> answers = Gen.Select(
            zone.Array[1, 8], OneOf("si", "us"), length.Array[0, 2], Gen.Bool,
            (zones, units, standing, gated) => new HouseAnswers { Zones = zones, Units = units, StandingLoops = standing, Gated = gated });
        answers.Sample(
            a =>
            {
                NewHouse made = HouseWriter.Write(a, "new.house.toml");
                return made.House is not null && made.Mistakes.All(mistake => !mistake.IsError);
            },
            iter: 100);
    }

    [Fact]
    public void An_answer_that_is_no_quantity_is_a_mistake_with_its_place()
    {
        NewHouse made = HouseWriter.Write(_small with { PumpPower = "much" }, "new.house.toml");
        Assert.Null(made.House);
        Assert.Contains(made.Mistakes, mistake => mistake.Key == "pump.power" && mistake.Found.Contains("much", StringComparison.Ordinal));
    }
}
