using System.Device.Gpio;
using NodaTime;
using RackController.Model;

namespace RackController.Hardware;

/// <summary>
/// The lines of one chip. A call that fails is a fault of this scan, and the others are still made. A fault that lasts is
/// answered by claiming again, for as long as it takes: a contact by itself while the chip's relays obey, since a relay that is let go
/// clicks; else the whole chip, all relays at their safe level and the contactors as they were told.
/// </summary>
internal sealed class GpioBank : IDisposable
{
    private static readonly Duration FirstRetry = Duration.FromSeconds(1);
    private static readonly Duration LongestRetry = Duration.FromSeconds(10);

    private readonly Func<string, GpioDriver> openChip;
    private readonly string chipLabel;
    private readonly OutputLine[] relays;
    private readonly ContactInput[] contacts;
    private GpioController? controller;
    private string lossFault = string.Empty;
    private bool readFailed;
    private bool writeFailed;
    private MonotonicTime retryAt = MonotonicTime.Never;
    private Duration retryAfter = FirstRetry;

    internal GpioBank(Func<string, GpioDriver> openChip, string chipLabel, OutputLine[] relays, ContactInput[] contacts)
    {
        this.openChip = openChip;
        this.chipLabel = chipLabel;
        this.relays = relays;
        this.contacts = contacts;
    }

    /// <summary>Opens the chip and takes its output lines, each at its safe level; again, a contactor as it was told.</summary>
    /// <exception cref="IOException">The chip or a line cannot be had; what was taken is released again.</exception>
    internal void ClaimRelays()
    {
        var opened = new GpioController(openChip(chipLabel));
        controller = opened;
        ClaimOrLetGo(() => Array.ForEach(relays, relay => relay.Claim(opened)));
    }

    /// <summary>Takes the contact lines of the opened chip.</summary>
    /// <exception cref="IOException">A line cannot be had; what was taken is released again.</exception>
    internal void ClaimContacts()
    {
        Invariant.Holds(controller is not null, "Contacts are claimed after the relays of their chip.");
        ClaimOrLetGo(() => Array.ForEach(contacts, contact => contact.Claim(controller)));
    }

    /// <summary>Reads every contact.</summary>
    /// <returns>What failed; null when nothing did.</returns>
    internal string? Read(MonotonicTime now, Readings readings)
    {
        ClaimAgainWhenDue(now);
        string? fault = null;
        foreach (var contact in contacts)
        {
            try
            {
                contact.Read(Held, now, readings);
            }
            catch (IOException failure)
            {
                contact.Lose(now, readings);
                fault ??= $"{contact.Name}: {failure.Message}";
            }
        }

        readFailed = fault is not null;
        ScheduleClaim(now);
        return fault;
    }

    /// <summary>Gives every relay its level, each whatever happened to the one before, and then reads back whether they followed: no pump
    /// waits for that of other relays.</summary>
    /// <returns>What failed; null when nothing did.</returns>
    internal string? Write(MonotonicTime now, RelayCommands commands)
    {
        string? fault = null;
        string? levelFault = null;
        foreach (var relay in relays)
        {
            try
            {
                relay.Write(Held, commands);
            }
            catch (IOException failure)
            {
                fault ??= $"{relay.Name}: {failure.Message}";
            }
        }

        foreach (var relay in relays)
        {
            try
            {
                levelFault = relay.ReadBack(Held) ?? levelFault;
            }
            catch (IOException failure)
            {
                fault ??= $"{relay.Name}: {failure.Message}";
            }
        }

        // A line that answers but does not follow is no reason to let the chip go: that would release its other relays. One that cannot
        // be written is: the chip may have to be opened again.
        writeFailed = fault is not null;
        ScheduleClaim(now);
        return fault ?? levelFault;
    }

    /// <summary>One line about every line of the chip.</summary>
    internal IEnumerable<string> Describe() =>
        relays.Select(relay => relay.Describe()).Concat(contacts.Select(contact => contact.Describe()));

    /// <summary>Lets the chip go. Whoever calls this has driven the relays to their safe level.</summary>
    public void Dispose()
    {
        controller?.Dispose();
        controller = null;
    }

    private GpioController Held => controller ?? throw new IOException(lossFault);

    private void ScheduleClaim(MonotonicTime now)
    {
        if (!readFailed && !writeFailed)
        {
            retryAt = MonotonicTime.Never;
            retryAfter = FirstRetry;
        }
        else if (retryAt == MonotonicTime.Never)
        {
            retryAt = now + retryAfter;
        }
    }

    private void ClaimAgainWhenDue(MonotonicTime now)
    {
        if (now < retryAt)
        {
            return;
        }

        retryAfter = Duration.Min(retryAfter + retryAfter, LongestRetry);
        retryAt = now + retryAfter;
        try
        {
            if (controller is not null && relays.Length > 0 && !writeFailed)
            {
                ClaimLostContacts(controller);
                return;
            }

            Dispose();
            ClaimRelays();
            ClaimContacts();
        }
        catch (IOException failure)
        {
            lossFault = failure.Message;
        }
    }

    private void ClaimLostContacts(GpioController held)
    {
        foreach (var contact in contacts.Where(contact => contact.IsLost))
        {
            contact.ClaimAgain(held);
        }
    }

    private void ClaimOrLetGo(Action claim)
    {
        try
        {
            claim();
        }
        catch
        {
            Dispose();
            throw;
        }
    }
}
