using System.Threading;
using ZoneControl.Board;
using ZoneControl.Logic;

namespace ZoneControl.Firmware;

/// <summary>Where the board begins.</summary>
public sealed class Program
{
    private readonly LogPump _pump;

    private Program(LogPump pump) => _pump = pump;

    /// <summary>Builds everything, then scans for ever.</summary>
    public static void Main()
    {
        var settings = new ControllerSettings();
        var plan = new BoardPlan();
        GeneratedSettings.Fill(settings, plan);
        BoardProgram board = DeviceBoard.Of(settings, plan, GeneratedSettings.Names(), GeneratedSettings.Fingerprint);
        board.Start();
        var clock = new BoardClock();
        var loop = new ScanLoop(board, clock);
        var program = new Program(new LogPump(board, loop, new BoardConsole()));
        var thread = new Thread(new ThreadStart(program.Log));
        thread.Priority = ThreadPriority.BelowNormal;
        thread.Start();
        Thread.CurrentThread.Priority = ThreadPriority.Highest;
        while (true)
            loop.RunOne();
    }

    private void Log()
    {
        while (true)
        {
            if (!_pump.WriteOne())
                Thread.Sleep(5);
        }
    }
}
