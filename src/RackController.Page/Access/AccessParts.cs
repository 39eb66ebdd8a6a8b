using NodaTime;
using RackController.Service;

namespace RackController.Page;

/// <summary>What access to the page hangs on, kept for as long as the service runs.</summary>
/// <param name="rack">The rack, on whose record it stands who came and went.</param>
/// <param name="folder">The folder of its files.</param>
internal sealed class AccessParts(IServedRack rack, StateFolder folder) : IDisposable
{
    private readonly Lazy<string> openFormToken = new(Secret.New);

    /// <summary>The rack.</summary>
    public IServedRack Rack => rack;

    /// <summary>Who may sign in.</summary>
    public People People { get; } = new(folder);

    /// <summary>Who is signed in where.</summary>
    public Sessions Sessions { get; } = new(System.IO.Path.Combine(folder.Path, "sessions.json"), SystemClock.Instance, rack.Complain);

    /// <summary>Checks passwords.</summary>
    public PasswordCheck Passwords { get; } = new();

    /// <summary>Who must wait before they try again.</summary>
    public Lockouts Lockouts { get; } = new(TimeProvider.System);

    /// <summary>What forms carry while nobody is set up, so that no other page can send them. Made for the first form.</summary>
    public string OpenFormToken => openFormToken.Value;

    public void Dispose() => Passwords.Dispose();
}
