using System.Collections.Immutable;
using System.Net;
using RackController.Service;

namespace RackController.Page;

/// <summary>Where and from what the page is served.</summary>
/// <param name="Listen">The address and port that it listens at, once somebody is set up where that is not this machine.</param>
/// <param name="RackFile">The path of the rack file, which the page may change.</param>
/// <param name="Folder">Where people, sessions and the certificate are kept.</param>
/// <param name="Speed">How many times faster than real time the rack runs, to say so.</param>
public sealed record PageOptions(IPEndPoint Listen, string RackFile, StateFolder Folder, double Speed)
{
    /// <summary>The path of the crops file that batches are begun by.</summary>
    public string CropsFile { get; init; } = "crops.yaml";

    /// <summary>The grower's own certificate; null for one that the page makes itself.</summary>
    public CertificateFiles? Certificate { get; init; }

    /// <summary>Sockets that somebody else opened and handed over, listened at in place of the address; empty for none.</summary>
    public ImmutableArray<InheritedSocket> Sockets { get; init; } = [];
}

/// <summary>A certificate in two files, as authorities hand it out.</summary>
/// <param name="Certificate">The path of the certificate, with those that it hangs on; PEM.</param>
/// <param name="Key">The path of its key; PEM, without a password.</param>
public sealed record CertificateFiles(string Certificate, string Key);
