using ZoneControl.Logic;

namespace ZoneControl.Bench.Running;

/// <summary>
/// Whatever turns contacts into outputs: the compiled controller, the compiled firmware on virtual pins, or a panel
/// without protection. The bench treats them alike.
/// </summary>
public interface IController
{
    /// <summary>A short name for tables and lanes, such as "controller" or "straight to the calls".</summary>
    string Name { get; }

    /// <summary>It has the house's debounce; a panel without protection takes contacts as they come.</summary>
    bool Debounces => true;

    /// <summary>Forgets everything, as a power cut does; the next scan is the first.</summary>
    void PowerUp();

    /// <summary>One scan. <paramref name="nowMs"/> is ms of a monotonic clock; both images stay the caller's.</summary>
    void Scan(long nowMs, InputImage inputs, OutputImage outputs);
}
