using System.Reflection;

namespace ZoneControl.Logic.Tests;

/// <summary>The controller of a compiled assembly, carried out by <see cref="IlMachine"/> with the desktop's own images at its ends.</summary>
internal sealed class BoardController
{
    private readonly IlProgram _program;
    private readonly IlMachine _machine;
    private readonly IlValue _controller;
    private readonly IlValue _inputs;
    private readonly IlValue _outputs;
    private readonly int _scan;
    private readonly int _scanWhole;

    public BoardController(LogicAssembly assembly, ControllerSettings settings)
    {
        _program = new IlProgram(assembly);
        _machine = new IlMachine(_program);
        IlValue copy = _machine.New("ControllerSettings");
        Fill(copy, settings);
        _controller = _machine.New("ZoneController", copy);
        _inputs = _machine.New("InputImage");
        _outputs = _machine.New("OutputImage");
        _scan = _program.Find("ZoneController.Scan");
        _scanWhole = _program.Find("ZoneController.ScanWhole");
    }

    /// <summary>A scan; what it shows goes into <paramref name="outputs"/>.</summary>
    /// <returns>Instructions that it took.</returns>
    public int Scan(long now, InputImage inputs, OutputImage outputs, bool whole = false)
    {
        Fill(_inputs, inputs);
        long before = _machine.Executed;
        _machine.Call(whole ? _scanWhole : _scan, _controller, IlValue.Of(now), _inputs, _outputs);
        Show(outputs);
        return (int)(_machine.Executed - before);
    }

    /// <summary>Instructions carried out by the method in which they stand.</summary>
    public Dictionary<string, long> ByMethod => _machine.ByMethod;

    private void Fill(IlValue target, object source)
    {
        var copy = (IlObject)target.Reference!;
        foreach (FieldInfo field in source.GetType().GetFields(BindingFlags.Public | BindingFlags.Instance))
        {
            int place = _program.PlaceOf(source.GetType().Name, field.Name);
            object value = field.GetValue(source)!;
            copy.Fields[place] = value is int[] array ? IlValue.To(array) : IlValue.Of(Convert.ToInt64(value, null));
        }
    }

    private void Show(OutputImage outputs)
    {
        var shown = (IlObject)_outputs.Reference!;
        foreach (FieldInfo field in typeof(OutputImage).GetFields(BindingFlags.Public | BindingFlags.Instance))
        {
            long number = shown.Fields[_program.PlaceOf(nameof(OutputImage), field.Name)].Number;
            object value = field.FieldType.IsEnum ? Enum.ToObject(field.FieldType, number) : Convert.ChangeType(number, field.FieldType, null);
            field.SetValue(outputs, value);
        }
    }
}
