using RackController.Model;

namespace RackController.Bench;

/// <summary>One of the scenario's own events comes about at this moment.</summary>
/// <param name="Name">Its name in the scenario.</param>
public sealed record Happens(string Name) : Statement
{
    /// <summary>The name that every run has: its beginning.</summary>
    public const string Start = "start";

    /// <inheritdoc/>
    public override Truth Judge(IObserved now) => Of(now.Happened.Contains(Name));

    /// <inheritdoc/>
    public override string Words(Site site) => $"\"{Name}\" happens";

    /// <inheritdoc/>
    public override string Seen(IObserved now) =>
        now.Happened.IsEmpty ? "nothing of the scenario happens" : $"\"{string.Join("\", \"", now.Happened)}\" happens";

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => subject == Name;
}

/// <summary>The controller reports an event at this moment.</summary>
/// <param name="Subject">What it happens to.</param>
/// <param name="What">What happens, or the words that this begins with.</param>
public sealed record Reports(string Subject, string What) : Statement
{
    /// <inheritdoc/>
    public override Truth Judge(IObserved now)
    {
        foreach (var happened in now.Events)
        {
            if (happened.Subject == Subject && Says(happened.What))
            {
                return Truth.Yes;
            }
        }

        return Truth.No;
    }

    /// <inheritdoc/>
    public override string Words(Site site) => $"{Subject} reports \"{What}\"";

    /// <inheritdoc/>
    public override string Seen(IObserved now)
    {
        foreach (var happened in now.Events)
        {
            if (happened.Subject == Subject)
            {
                return $"{Subject} reports \"{happened.What}\"";
            }
        }

        return $"{Subject} reports nothing";
    }

    /// <inheritdoc/>
    public override bool Concerns(Site site, string subject) => subject == Subject;

    private bool Says(string what) => what == What || what.StartsWith(What + " ", StringComparison.Ordinal);
}
