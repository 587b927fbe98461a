using System.Diagnostics;
using System.Runtime.Loader;
using MutantRunner;

// MutantRunner TESTS.dll list              the mutants that are in the controller's assembly beside it
// MutantRunner TESTS.dll OUT MUTANT ...    a line a mutant in OUT: its number, and "Killed" by whom, "Survived" or "Timeout"
// MUTANT_SECONDS: processor time after which a mutant is taken to run for ever, 60 unless told; a run without any takes some 4.
string tests = Path.GetFullPath(args[0]);
string folder = Path.GetDirectoryName(tests)!;
AssemblyLoadContext.Default.Resolving += (context, name) =>
    Path.Combine(folder, name.Name + ".dll") is var file && File.Exists(file) ? context.LoadFromAssemblyPath(file) : null;
var mutants = new Mutants(AssemblyLoadContext.Default.LoadFromAssemblyPath(Path.Combine(folder, "ZoneControl.Logic.dll")));
if (args[1] == "list")
{
    Console.WriteLine(string.Join('\n', mutants.Numbers()));
    return 0;
}

IReadOnlyList<Test> all = Test.All(AssemblyLoadContext.Default.LoadFromAssemblyPath(tests));
TimeSpan patience = TimeSpan.FromSeconds(int.Parse(Environment.GetEnvironmentVariable("MUTANT_SECONDS") ?? "60", null));
using var output = new StreamWriter(args[1], append: true) { AutoFlush = true };
foreach (string mutant in args[2..])
{
    mutants.Activate(int.Parse(mutant, null));
    string outcome = "Survived";
    var thread = new Thread(() => outcome = Test.FirstFailure(all) is { } failed ? $"Killed by {failed}" : outcome, 16 << 20) { IsBackground = true };
    thread.Start();
    // On a busy machine time says little; what the process has worked does.
    TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
    bool ended = false;
    while (!ended && Process.GetCurrentProcess().TotalProcessorTime - before < patience)
        ended = thread.Join(TimeSpan.FromSeconds(5));
    output.WriteLine($"{mutant} {(ended ? outcome : "Timeout")}");
    if (!ended)
        return 3; // a thread that loops for ever cannot be stopped: whoever called goes on with the next in a new process
}

return 0;
