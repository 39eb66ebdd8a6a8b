using System.Device.I2c;
using RackController.Model;

namespace RackController.Hardware.Probes;

/// <summary>Opens what sensors are on. Whoever cannot throws <see cref="IOException"/>, and is asked again.</summary>
/// <param name="Part">Opens a part on its bus.</param>
/// <param name="Pulses">Takes the line of a flow meter.</param>
internal sealed record ProbePorts(Func<BusPart, I2cDevice> Part, Func<PulseProbe, IPulseLine> Pulses)
{
    /// <summary>Those of this board.</summary>
    public static ProbePorts OfBoard { get; } = new(GpioRackIo.OpenPart, probe => new PulseLine(probe));
}
