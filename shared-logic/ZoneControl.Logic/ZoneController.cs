namespace ZoneControl.Logic;

/// <summary>The supervisory controller of one house.</summary>
public sealed class ZoneController
{
    /// <summary>A deadline that never comes.</summary>
    public const long Never = long.MaxValue;

    /// <summary>Builds the controller in its power-up state.</summary>
    public ZoneController(ControllerSettings settings) => _settings = settings;

    private readonly ControllerSettings _settings;

    /// <summary>One pass: reads the input image, decides, writes the output image.</summary>
    public void Scan(long nowMs, InputImage inputs, OutputImage outputs)
    {
        outputs.ScanMs = nowMs;
        outputs.AcceptedCalls = inputs.Calls & ((1 << _settings.ZoneCount) - 1);
        outputs.NextDeadlineMs = nowMs;
    }
}
