using System.Globalization;
using ZoneControl.Logic.Tests;

namespace ZoneControl.Logic.Benchmarks;

/// <summary>IL instructions that scans take as compiled for the board, counted by carrying them out.</summary>
internal static class InstructionTable
{
    private const int Dearest = 12;

    public static void Print(TextWriter output)
    {
        using var board = LogicAssembly.OfBoard();
        output.WriteLine("zones   idle  decides, nothing new   busy day: mean  most   everything at once: mean  most");
        foreach (int zones in (int[])[1, 6, 16])
        {
            var cost = new ScanCost(board, zones);
            int idle = cost.Idle();
            cost.Whole(); // ages that short scans did not count
            int whole = cost.Whole();
            (int busy, int busiest) = cost.Busy();
            (int frantic, int most) = new ScanCost(board, zones).Frantic();
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{zones,5} {idle,6} {whole,21} {busy,16} {busiest,5} {frantic,25} {most,5}"));
        }

        output.WriteLine();
        output.WriteLine("dearest methods of a busy scan, 16 zones");
        var sixteen = new ScanCost(board, 16);
        sixteen.Busy();
        foreach ((string method, int mean) in sixteen.ByMethod().Take(Dearest))
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{mean,6}  {method}"));
    }
}
