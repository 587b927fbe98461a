using Spectre.Console;
using Spectre.Console.Rendering;

namespace ZoneControl.Cli.Tests;

/// <summary>A terminal at which somebody is asked and never answers; only a stop ends the wait.</summary>
/// <param name="screen">Where is written.</param>
internal sealed class SilentPerson(IAnsiConsole screen) : IAnsiConsole, IAnsiConsoleInput
{
    private readonly TaskCompletionSource _asked = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done as soon as an answer is waited for.</summary>
    public Task Asked => _asked.Task;

    public Profile Profile => screen.Profile;

    public IAnsiConsoleCursor Cursor => screen.Cursor;

    public IAnsiConsoleInput Input => this;

    public IExclusivityMode ExclusivityMode => screen.ExclusivityMode;

    public RenderPipeline Pipeline => screen.Pipeline;

    public void Clear(bool home) => screen.Clear(home);

    public void Write(IRenderable renderable) => screen.Write(renderable);

    public void WriteAnsi(Action<AnsiWriter> action) => screen.WriteAnsi(action);

    public bool IsKeyAvailable() => false;

    public ConsoleKeyInfo? ReadKey(bool intercept) => throw new NotSupportedException("Nobody could stop this wait.");

    public async Task<ConsoleKeyInfo?> ReadKeyAsync(bool intercept, CancellationToken cancellationToken)
    {
        _asked.TrySetResult();
        await Task.Delay(Timeout.Infinite, cancellationToken);
        return null;
    }
}
