using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using ZoneControl.Cli;

// Numbers and dates look alike on every machine; set once here, nobody names a culture elsewhere.
CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);

using var stop = new CancellationTokenSource();
using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
return await App.RunAsync(args, Streams.OfProcess(), stop.Token);

// The first signal ends the work in good order; a second one ends the program at once.
void Stop(PosixSignalContext context)
{
    context.Cancel = !stop.IsCancellationRequested;
    stop.Cancel();
}
