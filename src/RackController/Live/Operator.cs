using RackController.Control;
using RackController.Model;
using RackController.Service;

namespace RackController.Live;

/// <summary>
/// Turns keys into requests. Stop is one key and always works; releasing a latch takes two, since it lets go of something
/// that an interlock found wrong.
/// </summary>
internal sealed class Operator
{
    private readonly IRunningRack rack;
    private readonly string name;
    private string? latchToConfirm;
    private bool choosesTier;
    private string? answer;

    public Operator(IRunningRack rack)
    {
        this.rack = rack;
        name = $"{Environment.UserName} at the terminal";
        ProofTests = new ProofTestGuide(name);
    }

    /// <summary>The proof tests that the person may be with.</summary>
    public ProofTestGuide ProofTests { get; }

    /// <summary>The rack that keys act on.</summary>
    public RackId Chosen { get; private set; }

    /// <summary>Takes one key.</summary>
    /// <param name="key">The key.</param>
    /// <param name="status">What the person saw when pressing it.</param>
    public void Take(char key, SiteStatus status)
    {
        var confirming = latchToConfirm;
        var choosing = choosesTier;
        latchToConfirm = null;
        choosesTier = false;
        answer = null;
        if (confirming is null && ProofTests.Take(char.ToUpperInvariant(key), status, (request, what) => Ask(request, what)))
        {
            return;
        }

        switch (char.ToUpperInvariant(key))
        {
            case 'S':
                Ask(new Stop(name, null), "stop everything");
                break;
            case 'R':
                Ask(new Resume(name, null), "resume");
                break;
            case 'F':
                Ask(new FloodNow(name, Chosen), $"flood {RackName} now");
                break;
            case 'N':
                Ask(new SkipNextFlood(name, Chosen), $"skip the next flood of {RackName}");
                break;
            case 'H':
                Ask(
                    new HoldForService(name, Chosen, rack.Site[Chosen].Limits.ServiceHoldMaximum),
                    $"hold the pump of {RackName}; pull the plug too");
                break;
            case 'E':
                Ask(new EndServiceHold(name, Chosen), $"end the service hold of {RackName}");
                break;
            case 'A':
                Acknowledge(status);
                break;
            case 'X':
                NameLatch(status);
                break;
            case 'Y' when confirming is not null:
                Ask(new ConfirmReset(name, confirming), $"reset {confirming}");
                break;
            case 'T':
                choosesTier = true;
                break;
            case >= '1' and <= '9' when choosing:
                ChangeTier(key - '0', status);
                break;
            case '\t':
                Chosen = new RackId((Chosen.Index + 1) % rack.Site.Racks.Length);
                break;
        }
    }

    /// <summary>The keys, the answer to the last one, or the question that waits for one.</summary>
    /// <param name="status">What the person sees.</param>
    /// <param name="width">Columns of the screen.</param>
    public StyledLine Legend(SiteStatus status, int width)
    {
        const int roomy = 115;
        const int roomForQuit = 90;
        var line = new StyledLine();
        var gap = width < roomy ? " " : "  ";
        if (latchToConfirm is { } latch)
        {
            return line.Add($"Reset {latch}? Look at the rack first. ", Tone.Caution).Add("Y", Tone.Strong)
                .Add(" reset   any other key: leave it latched", Tone.Quiet);
        }

        if (choosesTier)
        {
            return line.Add($"Which tier of {RackName} goes in or out of use? ").Add("1", Tone.Strong)
                .Add(" to ", Tone.Quiet).Add($"{Tiers}", Tone.Strong).Add("   any other key: none", Tone.Quiet);
        }

        if (answer is not null)
        {
            return line.Add(answer + "   ").Add("S", Tone.Strong).Add(" stop   ", Tone.Quiet)
                .Add("Esc", Tone.Strong).Add(" keys", Tone.Quiet);
        }

        if (ProofTests.IsOpen)
        {
            return ProofTestPage.Legend(status.ProofTest);
        }

        Key("S", "stop");
        Key("R", width < roomy ? "run" : "resume");
        Key("F", "flood");
        Key("N", "skip");
        Key("H", "hold");
        Key("E", "end");
        Key("T", "tier");
        Key("A", width < roomy ? "seen" : "acknowledge");
        Key("X", "reset");
        Key("P", "tests");
        if (rack.Site.Racks.Length > 1)
        {
            Key("Tab", width < roomy ? "next" : "next rack");
        }

        if (width >= roomForQuit || rack.Site.Racks.Length == 1)
        {
            Key("^C", "quit");
        }

        return line;

        void Key(string key, string what) => line.Add(key, Tone.Strong).Add($" {what}{gap}", Tone.Quiet);
    }

    private string RackName => rack.Site[Chosen].Name;

    private int Tiers => rack.Site[Chosen].Tiers.Length;

    private bool Ask(OperatorRequest request, string what)
    {
        var isAsked = rack.TryAsk(request);
        answer = isAsked ? $"Asked: {what}." : $"Not asked, too much waits already: {what}.";
        return isAsked;
    }

    private void ChangeTier(int number, SiteStatus status)
    {
        if (number > Tiers)
        {
            answer = $"{RackName} has no tier {number}.";
            return;
        }

        var use = !status.TiersInUse[Chosen.Index][number - 1];
        Ask(
            new SetTierInUse(name, Chosen, number, use),
            $"take tier {number} of {RackName} {(use ? "into use" : "out of use: no light, no water")}");
    }

    private void Acknowledge(SiteStatus status)
    {
        var open = status.Alarms.FirstOrDefault(alarm =>
            alarm.State is AlarmState.Unacknowledged or AlarmState.ReturnedUnacknowledged);
        if (open is null)
        {
            answer = "No alarm waits to be acknowledged.";
            return;
        }

        Ask(new Acknowledge(name, open.Key), $"acknowledge {open.Key}");
    }

    private void NameLatch(SiteStatus status)
    {
        if (status.Alarms.FirstOrDefault(alarm => alarm.State == AlarmState.Latched) is not { } latched)
        {
            answer = "Nothing is latched and ready to be reset.";
            return;
        }

        latchToConfirm = Ask(new ResetLatch(name, latched.Key), $"reset {latched.Key}") ? latched.Key : null;
    }
}
