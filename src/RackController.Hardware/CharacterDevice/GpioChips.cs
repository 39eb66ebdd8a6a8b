using Microsoft.Win32.SafeHandles;

namespace RackController.Hardware.CharacterDevice;

/// <summary>One GPIO chip of the machine, opened.</summary>
/// <param name="Path">Its device file, which may differ after the next boot.</param>
/// <param name="Label">The label that its driver gives it.</param>
/// <param name="LineCount">How many lines it has.</param>
/// <param name="Device">The opened device file; belongs to whoever holds this.</param>
internal sealed record GpioChip(string Path, string Label, int LineCount, SafeFileHandle Device);

/// <summary>The GPIO chips of the machine, found by label since their numbers change between boards and images.</summary>
internal static class GpioChips
{
    private const string Folder = "/dev";
    private const string Pattern = "gpiochip*";

    /// <summary>Opens the one chip with a label.</summary>
    /// <exception cref="GpioUnavailableException">There is none, there are several, or the account may not open it.</exception>
    internal static GpioChip Open(string label)
    {
        var chips = new List<GpioChip>();
        var denied = new List<string>();
        var refusals = new List<string>();
        foreach (var path in Directory.GetFiles(Folder, Pattern).Order(StringComparer.Ordinal))
        {
            try
            {
                chips.Add(OpenDevice(path));
            }
            catch (UnauthorizedAccessException)
            {
                denied.Add(path);
            }
            catch (IOException refusal)
            {
                refusals.Add(refusal.Message + ".");
            }
        }

        if (denied.Count > 0)
        {
            refusals.Add(PermissionDenied(denied));
        }

        var matches = chips.FindAll(chip => chip.Label == label);
        foreach (var chip in matches.Count == 1 ? chips.Except(matches) : chips)
        {
            chip.Device.Dispose();
        }

        return matches.Count == 1
            ? matches[0]
            : throw new GpioUnavailableException(WhyNot(label, matches.Count, chips.ConvertAll(chip => chip.Label), refusals));
    }

    /// <summary>Why the one chip with this label cannot be had, and what to do.</summary>
    internal static string WhyNot(string label, int matches, List<string> labels, List<string> refusals)
    {
        if (matches > 1)
        {
            return $"{matches} GPIO chips are labelled '{label}', so it is unclear which is meant: unplug one, or use a chip "
                + "whose label is its own.";
        }

        var reasons = string.Join(' ', refusals);
        if (labels.Count == 0)
        {
            return refusals.Count > 0
                ? $"No GPIO chip labelled '{label}' could be opened. {reasons}"
                : $"No GPIO chip labelled '{label}': this machine has no GPIO chip ({Folder}/{Pattern}). Connect it, run on "
                + "the board, or have the rack file simulate its I/O.";
        }

        var present = string.Join(", ", labels.Select(found => $"'{found}'"));
        return $"No GPIO chip labelled '{label}'. Chips here: {present}. Correct the label in the rack file, or connect the chip."
            + (refusals.Count > 0 ? " Not opened: " + reasons : "");
    }

    private static string PermissionDenied(List<string> paths) =>
        $"Permission to open {string.Join(", ", paths)} is denied: run as an account in the group that owns it (often 'gpio'; see "
        + $"'ls -l {paths[0]}').";

    private static unsafe GpioChip OpenDevice(string path)
    {
        var device = File.OpenHandle(path, FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);
        try
        {
            ChipInfo info = default;
            LibC.Control(device, KernelGpio.GetChipInfo, ref info, path, "does not answer as a GPIO chip");
            return new GpioChip(path, LibC.Text(info.Label), checked((int)info.Lines), device);
        }
        catch
        {
            device.Dispose();
            throw;
        }
    }
}
