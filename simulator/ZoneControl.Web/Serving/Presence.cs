using Microsoft.AspNetCore.Components.Server.Circuits;

namespace ZoneControl.Web.Serving;

/// <summary>How many people are on the page; the next one beyond the most is told to wait.</summary>
public sealed class Attendance(ServeOptions options)
{
    private int _count;

    /// <summary>Sessions open now.</summary>
    public int Count => Volatile.Read(ref _count);

    /// <summary>Takes a place; false when all are taken.</summary>
    public bool Enter()
    {
        if (Interlocked.Increment(ref _count) <= options.MostSessions)
            return true;
        Interlocked.Decrement(ref _count);
        return false;
    }

    /// <summary>Gives a place back.</summary>
    public void Leave() => Interlocked.Decrement(ref _count);
}

/// <summary>Whether the browser of one session is there. A bench stands still while it is not.</summary>
public sealed class Presence(Attendance attendance) : CircuitHandler
{
    private bool _entered;

    /// <summary>The browser is connected.</summary>
    public bool IsHere { get; private set; }

    /// <summary>There was no place left for this session.</summary>
    public bool IsFull { get; private set; }

    /// <inheritdoc/>
    public override Task OnCircuitOpenedAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        _entered = attendance.Enter();
        IsFull = !_entered;
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override Task OnCircuitClosedAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        if (_entered)
            attendance.Leave();
        _entered = false;
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        IsHere = true;
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        IsHere = false;
        return Task.CompletedTask;
    }
}
