using System.Net;
using RackController.Service;

namespace RackController.Page;

/// <summary>Where and from what the page is served.</summary>
/// <param name="Listen">The address and port that it listens at.</param>
/// <param name="RackFile">The path of the rack file, which the page may change.</param>
/// <param name="Folder">Where people, sessions and the certificate are kept.</param>
/// <param name="Speed">How many times faster than real time the rack runs, to say so.</param>
public sealed record PageOptions(IPEndPoint Listen, string RackFile, StateFolder Folder, double Speed);
