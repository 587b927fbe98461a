using System.Text.Json;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Running;
using ZoneControl.Cli.Files;
using ZoneControl.Logic;
using ZoneControl.Web.Tests;

namespace ZoneControl.Cli.Tests;

public class ResultFileTests
{
    [Fact]
    public void Fields_with_commas_quotes_or_line_ends_are_quoted()
    {
        using var text = new StringWriter();
        Csv.Record(text, ["plain", "a,b", "say \"so\"", "two\nlines", ""]);
        Assert.Equal("plain,\"a,b\",\"say \"\"so\"\"\",\"two\nlines\",\r\n", text.ToString());
    }

    [Fact]
    public void The_trace_table_says_units_in_its_head_and_shows_both_sides_of_a_step()
    {
        PlantSample before = new()
        {
            Ms = 1000,
            RawCalls = 1,
            RawSwitches = 0,
            Travel = [0.25],
            ZoneFlowM3s = [0],
            PumpFlowM3s = 0,
            BypassFlowM3s = 0,
            PumpHeadM = 0,
            TrappedWaterC = 18.5,
            DeadheadS = 0,
            RawContacts = Contact.Supply,
        };
        var trace = new Trace(
            [new Frame { Ms = 0, PowerUp = true }, new Frame { Ms = 1000, Calls = 1, Valves = 1, ProvenValves = 1, Pump = true, Hold = HoldReason.None,
                StuckSwitches = 1, Contacts = Contact.Flow | Contact.Supply, Alarms = Alarm.FlowTrip | Alarm.TimeFault, ClockAheadMs = -2_500 },
                new Frame { Ms = 2000, Unpowered = true }],
            [before with { Ms = 0, RawCalls = 0, Travel = [0] }, before,
                before with { PumpFlowM3s = 0.0001, ZoneFlowM3s = [0.0001], PumpHeadM = 3 },
                before with { Ms = 3000, Travel = [1], RawSwitches = 1, DeadheadS = 0.5 }],
            3000);
        using var text = new StringWriter();
        TraceCsv.Write(text, trace, ["north, \"old\" wing"]);
        string[] lines = text.ToString().Split("\r\n");
        Assert.Equal(
            "time_s,powered,power_up,lockout,pump,heat_demand,hold_reason,\"north, \"\"old\"\" wing thermostat\"," +
            "\"north, \"\"old\"\" wing call\",\"north, \"\"old\"\" wing end_switch_contact\",\"north, \"\"old\"\" wing end_switch\"," +
            "\"north, \"\"old\"\" wing valve\",\"north, \"\"old\"\" wing proven\",\"north, \"\"old\"\" wing late\"," +
            "\"north, \"\"old\"\" wing latched\",\"north, \"\"old\"\" wing switch_early\",\"north, \"\"old\"\" wing switch_stuck\",\"north, \"\"old\"\" wing sense\",\"north, \"\"old\"\" wing hand\",\"north, \"\"old\"\" wing travel\"," +
            "\"north, \"\"old\"\" wing flow_L_per_min\",pump_flow_L_per_min,bypass_flow_L_per_min,pump_head_m,trapped_water_degC,deadhead_s," +
            "flow contact,flow accepted,limit contact,limit accepted,freeze contact,freeze accepted,priority contact,priority accepted," +
            "reset contact,reset accepted,supply contact,supply accepted,service contact,service accepted,alarms,clock_ahead_s,deadline_s,season contact,\"north, \"\"old\"\" wing sense_contact\",scan",
            lines[0]);
        Assert.Equal(
            [
                "0,1,1,0,0,0,no hold,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,0,18.5,0,0,0,0,0,0,0,0,0,0,0,1,0,0,0,,0,0,0,0,1",
                "1,1,1,0,0,0,no hold,1,0,0,0,0,0,0,0,0,0,0,0,0.25,0,0,0,0,18.5,0,0,0,0,0,0,0,0,0,0,0,1,0,0,0,,0,0,0,0,1",
                "1,1,0,0,1,0,no hold,1,1,0,0,1,1,0,0,0,1,0,0,0.25,6,6,0,3,18.5,0,0,1,0,0,0,0,0,0,0,0,1,1,0,0,flow trip; clock fault,-2.5,0,0,0,0",
                "2,0,0,0,0,0,no hold,1,0,0,0,0,0,0,0,0,0,0,0,0.25,6,6,0,3,18.5,0,0,0,0,0,0,0,0,0,0,0,1,0,0,0,,0,0,0,0,1",
                "3,0,0,0,0,0,no hold,1,0,1,0,0,0,0,0,0,0,0,0,1,0,0,0,0,18.5,0.5,0,0,0,0,0,0,0,0,0,0,1,0,0,0,,0,0,0,0,1",
                "",
            ],
            lines[1..]);
    }

    [Fact]
    public void The_JSON_result_has_a_schema_and_units_in_its_names()
    {
        string text = RunJson.From(Morning.Report(passed: false));
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(text);
        JsonElement root = json.RootElement;
        Assert.Equal(["schema", "house", "script", "passed", "runs"], root.EnumerateObject().Select(p => p.Name));
        Assert.Equal("zonecontrol.run.1", root.GetProperty("schema").GetString());
        Assert.False(root.GetProperty("passed").GetBoolean());
        JsonElement judged = root.GetProperty("runs")[0];
        Assert.Equal(
            ["controller", "judged", "passed", "endMs", "totals", "rules", "expectations", "holds", "happenings"],
            judged.EnumerateObject().Select(p => p.Name));
        Assert.Equal(
            ["deadheadS", "shutS", "deadheadEvents", "hottestTrappedDegC", "firstWarmFlowS", "pumpStarts", "pumpRunS", "pumpEnergyWh", "valveStrokes"],
            judged.GetProperty("totals").EnumerateObject().Select(p => p.Name));
        Assert.Equal("broken", judged.GetProperty("rules")[0].GetProperty("judgement").GetString());
        Assert.Equal(312_500, judged.GetProperty("rules")[0].GetProperty("firstBrokenMs").GetInt64());
        Assert.Equal("notCalledUpon", judged.GetProperty("rules")[2].GetProperty("judgement").GetString());
        Assert.Equal("valves opening", judged.GetProperty("holds")[0].GetProperty("reason").GetString());
        JsonElement plain = root.GetProperty("runs")[1];
        Assert.False(plain.GetProperty("judged").GetBoolean());
        Assert.Equal(1080.4, plain.GetProperty("totals").GetProperty("deadheadS").GetDouble());
        Assert.Equal(JsonValueKind.Null, plain.GetProperty("totals").GetProperty("firstWarmFlowS").ValueKind);
    }
}
