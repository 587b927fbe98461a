using System.Numerics;
using ZoneControl.Bench.Running;
using ZoneControl.Logic;

namespace ZoneControl.Bench.Captures;

/// <summary>What every channel of a capture says now, and which of them the capture has at all.</summary>
internal sealed class ChannelState
{
    private readonly int[] _values = new int[Channel.Kinds];
    private readonly int[] _captured = new int[Channel.Kinds];
    private readonly int[] _unknown = new int[Channel.Kinds];
    private readonly long[] _numbers = new long[Channel.Kinds];
    private int _unknownKinds;

    public ChannelState() => _numbers[(int)ChannelKind.Next] = ZoneController.Never;

    /// <summary>Channels of this family that the capture shows.</summary>
    public int Captured(ChannelKind kind) => _captured[(int)kind];

    /// <summary>What is on in a family.</summary>
    public int Values(ChannelKind kind) => _values[(int)kind];

    /// <summary>A channel that the capture has is not known now.</summary>
    public bool AnyUnknown => _unknownKinds != 0;

    /// <summary>The first channel that is not known now.</summary>
    public Channel FirstUnknown
    {
        get
        {
            int kind = BitOperations.TrailingZeroCount(_unknownKinds);
            return new Channel((ChannelKind)kind, BitOperations.TrailingZeroCount(_unknown[kind]));
        }
    }

    /// <summary>The capture has this channel; it is not known yet.</summary>
    public void Expect(Channel channel)
    {
        _captured[(int)channel.Kind] |= channel.Mask;
        if (!channel.IsNumber)
            Doubt(channel);
    }

    /// <summary>The capture's maker says that this channel is always off.</summary>
    public void NeverOn(ChannelKind kind, int mask) => _captured[(int)kind] |= mask;

    /// <summary>The channel is on or off from now on.</summary>
    public void Set(Channel channel, bool on)
    {
        int kind = (int)channel.Kind;
        _values[kind] = on ? _values[kind] | channel.Mask : _values[kind] & ~channel.Mask;
        Know(channel);
    }

    /// <summary>The channel's number from now on.</summary>
    public void SetNumber(Channel channel, long value) => _numbers[(int)channel.Kind] = value;

    /// <summary>What of a family is on from now on; everything else is off.</summary>
    public void SetAll(ChannelKind kind, int mask)
    {
        _values[(int)kind] = mask;
        Know(new Channel(kind, -1));
    }

    /// <summary>Nobody knows what the channel says from now on.</summary>
    public void Doubt(Channel channel)
    {
        _unknown[(int)channel.Kind] |= channel.Mask;
        _unknownKinds |= 1 << (int)channel.Kind;
    }

    /// <summary>Everything is off and known, as at a power-up.</summary>
    public void Clear()
    {
        Array.Clear(_values);
        Array.Clear(_unknown);
        _unknownKinds = 0;
        _numbers[(int)ChannelKind.ClockAhead] = 0;
        _numbers[(int)ChannelKind.Next] = ZoneController.Never;
    }

    /// <summary>The wires now.</summary>
    public WireMasks Wires => new(
        Values(ChannelKind.Thermostat), Values(ChannelKind.EndSwitchWire), Values(ChannelKind.SenseWire),
        Values(ChannelKind.ContactWire));

    /// <summary>The frame that the channels show. Channels that are not captured say what disturbs least: off, and supplied.</summary>
    /// <param name="ms">The frame's time.</param>
    public Frame ToFrame(long ms) => new()
    {
        Ms = ms,
        PowerUp = Values(ChannelKind.PowerUp) != 0,
        Unpowered = Captured(ChannelKind.Powered) != 0 && Values(ChannelKind.Powered) == 0,
        Calls = Values(ChannelKind.Call),
        EndSwitches = Values(ChannelKind.EndSwitch),
        Senses = Values(ChannelKind.Sense),
        Hands = Values(ChannelKind.Hand),
        Contacts = Values(ChannelKind.Contact) | (Contact.Supply & ~Captured(ChannelKind.Contact)),
        Valves = Values(ChannelKind.Valve),
        Pump = Values(ChannelKind.Pump) != 0,
        Heat = Values(ChannelKind.Heat) != 0,
        Hold = HoldOf(Values(ChannelKind.Hold)),
        LateValves = Values(ChannelKind.Late),
        LatchedValves = Values(ChannelKind.Latched),
        EarlySwitches = Values(ChannelKind.Early),
        StuckSwitches = Values(ChannelKind.Stuck),
        Alarms = Values(ChannelKind.Alarm),
        ProvenValves = Values(ChannelKind.Proven),
        ClockAheadMs = _numbers[(int)ChannelKind.ClockAhead],
        NextDeadlineMs = _numbers[(int)ChannelKind.Next],
    };

    private static HoldReason HoldOf(int mask) => mask == 0 ? HoldReason.None : (HoldReason)BitOperations.TrailingZeroCount(mask);

    private void Know(Channel channel)
    {
        int kind = (int)channel.Kind;
        if (_unknown[kind] == 0)
            return;
        _unknown[kind] &= ~channel.Mask;
        if (_unknown[kind] == 0)
            _unknownKinds &= ~(1 << kind);
    }
}
