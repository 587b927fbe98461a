using System.Reflection.Metadata;
using ZoneControl.Logic.Tests;

namespace ZoneControl.Firmware.Tests;

/// <summary>The firmware uses only what the board has.</summary>
public class BoardReferenceTests
{
    /// <summary>
    /// Public members of the device packages that the firmware uses, with their signatures as in the public sources:
    /// System.Device.Gpio at cd99158 (GpioController.cs, GpioPin.cs, PinValue.cs, PinMode.cs) and
    /// nanoFramework.Hardware.Esp32 (HighResTimer.cs), both of the nanoframework organisation on GitHub.
    /// </summary>
    private static readonly string[] _device =
    [
        "Void System.Device.Gpio.GpioController..ctor()",
        "System.Device.Gpio.GpioPin System.Device.Gpio.GpioController.OpenPin(Int32)",
        "System.Device.Gpio.PinValue System.Device.Gpio.GpioPin.Read()",
        "Void System.Device.Gpio.GpioPin.SetPinMode(System.Device.Gpio.PinMode)",
        "Void System.Device.Gpio.GpioPin.Write(System.Device.Gpio.PinValue)",
        "System.Device.Gpio.PinValue System.Device.Gpio.PinValue.get_High()",
        "System.Device.Gpio.PinValue System.Device.Gpio.PinValue.get_Low()",
        "Int32 System.Device.Gpio.PinValue.op_Explicit(System.Device.Gpio.PinValue)",
        "UInt64 nanoFramework.Hardware.Esp32.HighResTimer.GetCurrent()",
    ];

    public static TheoryData<string> Files => [.. BoardAssemblies.Files];

    [Theory]
    [MemberData(nameof(Files))]
    public void An_assembly_references_only_what_goes_onto_the_board(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        MetadataReader reader = assembly.Reader;
        string[] onTheBoard =
            ["mscorlib", "System.Device.Gpio", "nanoFramework.Hardware.Esp32", "ZoneControl.Board", "ZoneControl.Logic"];

        Assert.Subset(onTheBoard.ToHashSet(), reader.AssemblyReferences.Select(r => reader.GetString(reader.GetAssemblyReference(r).Name)).ToHashSet());
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_member_that_it_uses_of_the_core_library_is_in_the_boards(string file)
    {
        using LogicAssembly core = BoardAssemblies.CoreLibrary();
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        HashSet<string> had = [.. FullSignatures.Had(core)];

        string[] used = [.. FullSignatures.Used(assembly).Where(use => use.Assembly == "mscorlib").Select(use => use.Member)];

        Assert.NotEmpty(used);
        Assert.Equal([], used.Where(member => !had.Contains(member)));
    }

    [Theory]
    [InlineData("ZoneControl.Firmware.exe")]
    [InlineData("ZoneControl.Board.dll")]
    public void Every_member_that_it_uses_of_our_own_is_there(string file)
    {
        using LogicAssembly assembly = BoardAssemblies.Open(file);
        HashSet<string> had = [.. BoardAssemblies.Files.SelectMany(own =>
        {
            using LogicAssembly other = BoardAssemblies.Open(own);
            return FullSignatures.Had(other).ToList();
        })];

        Assert.Equal([], FullSignatures.Used(assembly)
            .Where(use => use.Assembly.StartsWith("ZoneControl.", StringComparison.Ordinal) && !had.Contains(use.Member)));
    }

    [Fact]
    public void The_firmware_uses_these_members_of_the_device_packages_and_no_others()
    {
        using LogicAssembly firmware = BoardAssemblies.Open("ZoneControl.Firmware.exe");
        IEnumerable<string> used = FullSignatures.Used(firmware)
            .Where(use => use.Assembly is "System.Device.Gpio" or "nanoFramework.Hardware.Esp32").Select(use => use.Member);

        Assert.Equal(_device.Order(), used.Distinct().Order());
    }

    [Fact]
    public void The_stand_ins_have_exactly_those_members_beside_the_virtual_board()
    {
        IEnumerable<string> had = BoardAssemblies.StandIns.SelectMany(file =>
        {
            using LogicAssembly standIn = BoardAssemblies.Open(file);
            MetadataReader reader = standIn.Reader;
            bool IsDevice(TypeDefinition type) =>
                reader.GetString(type.Namespace) is "System.Device.Gpio" or "nanoFramework.Hardware.Esp32"
                && reader.GetString(type.Name) != "PinMode";
            return FullSignatures.Had(standIn, IsDevice, publicOnly: true).ToList();
        });

        // A class without a constructor of its own has the compiler's; the real HighResTimer has one too.
        Assert.Equal(_device.Append("Void nanoFramework.Hardware.Esp32.HighResTimer..ctor()").Order(), had.Order());
    }

    [Fact]
    public void Pin_modes_have_the_numbers_of_the_real_ones()
    {
        using LogicAssembly standIn = BoardAssemblies.Open("System.Device.Gpio.dll");
        MetadataReader reader = standIn.Reader;
        TypeDefinition modes = reader.TypeDefinitions.Select(reader.GetTypeDefinition).Single(t => reader.GetString(t.Name) == "PinMode");
        IEnumerable<(string, int)> found =
            from handle in modes.GetFields()
            let field = reader.GetFieldDefinition(handle)
            where !field.GetDefaultValue().IsNil
            select (reader.GetString(field.Name), reader.GetBlobReader(reader.GetConstant(field.GetDefaultValue()).Value).ReadInt32());

        Assert.Equal([("Input", 0), ("Output", 3)], found); // PinMode.cs counts from 0: Input, InputPullDown, InputPullUp, Output
    }

    [Fact]
    public void The_look_at_members_sees_one_that_the_board_lacks()
    {
        using LogicAssembly core = BoardAssemblies.CoreLibrary();
        using var desktop = new LogicAssembly(typeof(ZoneControl.Bench.Houses.House).Assembly.Location);

        Assert.DoesNotContain("Int32 System.Math.Max(Int32, Int32)", FullSignatures.Had(core));
        Assert.NotEmpty(FullSignatures.Had(core));
        Assert.Contains(desktop.Reader.AssemblyReferences, r => desktop.Reader.GetString(desktop.Reader.GetAssemblyReference(r).Name) != "mscorlib");
    }
}
