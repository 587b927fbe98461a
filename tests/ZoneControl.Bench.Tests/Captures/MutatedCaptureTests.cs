using System.Globalization;
using System.Text;
using CsCheck;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;
using ZoneControl.Bench.Running;

namespace ZoneControl.Bench.Tests.Captures;

/// <summary>
/// Whatever is done to a capture, the audit says something about it and never fails itself. MUTATED_CAPTURES gives another
/// number of captures to try, such as a million.
/// </summary>
public class MutatedCaptureTests
{
    private static readonly long _tries =
        long.TryParse(Environment.GetEnvironmentVariable("MUTATED_CAPTURES"), CultureInfo.InvariantCulture, out long tries) ? tries : 6_000;

    private static readonly House _house = Rig.House("two-rooms.house.toml");

    private static readonly byte[][] _spice =
    [
        .. new[]
        {
            "#", "#0", "#-1", "#99999999999999999999999999", "1!", "x!", "z\"", "b1010101 !", "bx !", "r1e308 !", "$dumpoff", "$dumpon", "$end",
            "$var wire 1 ! pump $end", "$timescale 1 fs $end", "$comment", "@", "@-5 pump on", "@1 boot log=1 fp=0 zones=2", "next never",
            "@99999999999999999999 next 1", "lost n=4", "fault exception", "\"", "\"\"", ",", ",,,", ";", "\t", "\r\n", "\n", "\0", "NaN",
            "1e999", "-1", "never", "no hold", "valves opening", "clock fault; no flow", "0.0005", "9223372036854775807", "-9223372036854775808",
        }.Select(Encoding.UTF8.GetBytes),
        [0xFF, 0xFE], [0xC3, 0x28], [0xEF, 0xBB, 0xBF], [0xE2, 0x80, 0xAE],
    ];

    private static readonly byte[][] _seeds = Seeds();

    private static readonly Gen<(int Kind, double At, double Length, int Spice, byte Byte)> _cut =
        Gen.Select(Gen.Int[0, 6], Gen.Double[0, 1], Gen.Double[0, 1], Gen.Int[0, 1_000], Gen.Byte);

    [Fact]
    public void A_mutated_capture_is_judged_or_refused_and_crashes_nothing()
    {
        int refused = 0;
        int judged = 0;
        Gen.Select(Gen.Int[0, _seeds.Length - 1], _cut.Array[1, 6]).Sample(
            (seed, cuts) =>
            {
                byte[] capture = _seeds[seed];
                foreach ((int kind, double at, double length, int spice, byte letter) in cuts)
                    capture = Cut(capture, kind, at, length, _spice[spice % _spice.Length], letter);
                Audit audit = CaptureAudit.Run(_house, new MemoryStream(capture), "capture", ChannelMap.None);
                Interlocked.Increment(ref audit.Result is null ? ref refused : ref judged);
                Assert.True(audit.Result is not null || audit.Mistakes.Count > 0);
                Assert.All(audit.Mistakes, mistake => Assert.DoesNotContain(mistake.ToString(), char.IsControl));
            },
            iter: _tries,
            threads: 2);

        // Mutations that all end alike would try nothing.
        Assert.True(refused > _tries / 20 && judged > _tries / 20, $"{refused} refused, {judged} judged");
    }

    private static byte[] Cut(byte[] capture, int kind, double at, double length, byte[] spice, byte letter)
    {
        int from = (int)(at * capture.Length);
        int count = (int)(length * length * length * (capture.Length - from));
        ReadOnlySpan<byte> before = capture.AsSpan(0, from);
        ReadOnlySpan<byte> rest = capture.AsSpan(from);
        return kind switch
        {
            0 => [.. before],
            1 => [.. before, .. rest[count..]],
            2 => [.. before, .. rest[..Math.Min(count, 2_000)], .. rest],
            3 => [.. before, .. spice, .. rest],
            4 when rest.Length > 0 => [.. before, letter, .. rest[1..]],
            5 => [.. before, (byte)'\n', .. spice, (byte)'\n', .. rest],
            _ => [.. rest, .. before],
        };
    }

    private static byte[][] Seeds()
    {
        Run run = Rig.Run("two-rooms.house.toml", "two-rooms-evening.script.toml", Rig.Library);
        Trace trace = run.Trace;

        // Short ones, so that a million of them are tried in reasonable time.
        run = run with
        {
            Trace = trace with
            {
                Frames = [.. trace.Frames.Where(frame => frame.Ms < 1_000_000)],
                Samples = [.. trace.Samples.Where(sample => sample.Ms < 1_000_000).Where((_, i) => i % 20 == 0)],
                EndMs = 1_000_000,
            },
        };
        string foreign = "$date today $end\n$timescale 100 us $end\n$scope module panel $end\n$var wire 1 ! den.valve $end\n"
            + "$var wire 1 \" nook.valve $end\n$var wire 1 # pump $end\n$var reg 4 $ bus [3:0] $end\n$upscope $end\n$enddefinitions $end\n"
            + "#0\n$dumpvars\n0!\n0\"\n0#\nb0000 $\n$end\n#10000\n1!\n1#\n#50000\nb1x1z $\n#900000\n$dumpoff\nx!\nx\"\nx#\n$end\n#950000\n$dumpon\n0!\n0\"\n0#\n$end\n#1000000\n";
        return [.. new[] { Rig.Vcd(run), Rig.Csv(run), BoardLog.Of(run), foreign, "Time [s],pump,den.valve\n-0.5,0,0\n0,1,1\n0.25,x,0\n9,0,1\n" }
            .Select(Encoding.UTF8.GetBytes)];
    }
}
