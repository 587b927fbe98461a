using System.Reflection;
using System.Runtime.Loader;

namespace ZoneControl.Bench.Boards;

/// <summary>
/// The compiled firmware, loaded for one virtual board. It is the assembly that is built for netnano1.0, not the desktop's: its
/// core library is answered with the desktop's, and only ints, strings and delegates cross, since its classes are not ours.
/// </summary>
/// <remarks>Board tools compile the same sources once more for a real board.</remarks>
public sealed class FirmwareImage
{
    private readonly Assembly _firmware;
    private readonly Type _pins;

    /// <summary>Loads it from a folder.</summary>
    /// <exception cref="FileNotFoundException">The folder lacks it.</exception>
    public FirmwareImage(string folder)
    {
        var context = new ImageContext(folder);
        _firmware = context.LoadFromAssemblyPath(Path.Combine(folder, "ZoneControl.Firmware.exe"));
        _pins = context.LoadFromAssemblyName(new AssemblyName("System.Device.Gpio")).GetType("ZoneControl.DeviceApi.VirtualPins", true)!;
        Type clock = context.LoadFromAssemblyName(new AssemblyName("nanoFramework.Hardware.Esp32"))
            .GetType("ZoneControl.DeviceApi.VirtualClock", true)!;
        Clock = clock.GetMethod("Attach")!;
    }

    /// <summary>Where a program's build leaves it.</summary>
    public static string Folder => Path.Combine(AppContext.BaseDirectory, "firmware");

    private MethodInfo Clock { get; }

    /// <summary>Powers a chip up: pins wired, clock attached, the program built and started.</summary>
    /// <param name="words">Settings and plan.</param>
    /// <param name="names">The zones' names.</param>
    /// <param name="stated">The fingerprint that was generated with them.</param>
    /// <param name="wires">What the pins are wired to.</param>
    /// <param name="clock">Microseconds since boot.</param>
    public FirmwareProgram PowerUp(int[] words, string[] names, string stated, IWires wires, Func<long> clock)
    {
        MethodInfo powerUp = _pins.GetMethod("PowerUp")!;
        ParameterInfo[] callbacks = powerUp.GetParameters();
        powerUp.Invoke(null,
        [
            Delegate.CreateDelegate(callbacks[0].ParameterType, wires, typeof(IWires).GetMethod(nameof(IWires.Level))!),
            Delegate.CreateDelegate(callbacks[1].ParameterType, wires, typeof(IWires).GetMethod(nameof(IWires.Drive))!),
        ]);
        Type reader = Clock.GetParameters()[0].ParameterType;
        Clock.Invoke(null, [Delegate.CreateDelegate(reader, clock.Target, clock.Method)]);
        object program = _firmware.GetType("ZoneControl.Firmware.DeviceBoard", true)!.GetMethod("FromWords")!
            .Invoke(null, [words, names, stated])!;
        return new FirmwareProgram(program);
    }

    private sealed class ImageContext(string folder) : AssemblyLoadContext
    {
        protected override Assembly? Load(AssemblyName assemblyName)
        {
            string path = Path.Combine(folder, assemblyName.Name + ".dll");
            return File.Exists(path) ? LoadFromAssemblyPath(path) : null; // mscorlib: the desktop's facade answers
        }
    }
}
