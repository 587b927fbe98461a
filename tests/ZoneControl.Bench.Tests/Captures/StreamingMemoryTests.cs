using System.Text;
using ZoneControl.Bench.Captures;
using ZoneControl.Bench.Houses;

namespace ZoneControl.Bench.Tests.Captures;

/// <summary>Run while no other test does: what they hold in memory would be counted.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class RunAlone
{
    public const string Name = "run alone";
}

[Collection(RunAlone.Name)]
public class StreamingMemoryTests
{
    private static readonly House _house = Rig.House("bakery.house.toml");

    [Fact]
    public void Memory_does_not_grow_with_the_capture()
    {
        long Peak(long bytes)
        {
            byte[] head = Encoding.UTF8.GetBytes("$timescale 1 ms $end $var wire 1 ! pump $end $var wire 1 a noise $end $enddefinitions $end\n#0\n0!\n");
            using var capture = new Joined(head, new Repeating("1a\n0a\n#1\n"u8.ToArray(), bytes));
            long most = 0;
            Audit audit = CaptureAudit.Run(
                _house, capture, "long", ChannelMap.None, new Sampled(() => most = Math.Max(most, GC.GetTotalMemory(true))),
                TestContext.Current.CancellationToken);
            Assert.NotNull(audit.Result);
            return most;
        }

        Assert.InRange(Peak(9 << 20) - Peak(9 << 15), long.MinValue, 4 << 20);
    }

    private sealed class Sampled(Action look) : IProgress<AuditProgress>
    {
        private int _told;

        public void Report(AuditProgress value)
        {
            if (_told++ % 50 == 0)
                look();
        }
    }
}
