using Microsoft.Win32.SafeHandles;
using RackController.Model;

namespace RackController.Hardware.CharacterDevice;

/// <summary>One GPIO chip of the machine, opened.</summary>
/// <param name="Path">Its device file, which may differ after the next boot.</param>
/// <param name="Label">The label that its driver gives it.</param>
/// <param name="LineCount">How many lines it has.</param>
/// <param name="Device">The opened device file; belongs to whoever holds this.</param>
internal sealed record GpioChip(string Path, string Label, int LineCount, SafeFileHandle Device);

/// <summary>The GPIO chips of the machine, found by label, since their numbers change between boards and images, or by number where a rack
/// file insists.</summary>
internal static class GpioChips
{
    private const string Folder = "/dev";
    private const string Pattern = "gpiochip*";

    /// <summary>Looks at a chip without taking anything of it.</summary>
    /// <exception cref="IOException">It cannot be had; the message says why, and what to do.</exception>
    internal static ChipSight Look(string name)
    {
        var chip = Open(name);
        using (chip.Device)
        {
            return new ChipSight(
                chip.Path, chip.Label, [.. Enumerable.Range(0, chip.LineCount).Select(offset => HeldLine.NameOf(chip, offset))]);
        }
    }

    /// <summary>Opens the one chip with a label or a device file.</summary>
    /// <exception cref="GpioUnavailableException">There is none, there are several, or the account may not open it.</exception>
    internal static GpioChip Open(string name)
    {
        var chips = new List<GpioChip>();
        var denied = new List<string>();
        var refusals = new List<string>();
        var wanted = name;
        foreach (var path in Directory.GetFiles(Folder, Pattern).Order(StringComparer.Ordinal))
        {
            try
            {
                if (File.ResolveLinkTarget(path, returnFinalTarget: true) is { } target)
                {
                    // Some boards keep a number of before alive by a link, which is no second chip.
                    wanted = path == name ? target.FullName : wanted;
                    continue;
                }

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

        var byNumber = IsNumbered(name);
        var matches = chips.FindAll(chip => (byNumber ? chip.Path : chip.Label) == wanted);
        foreach (var chip in matches.Count == 1 ? chips.Except(matches) : chips)
        {
            chip.Device.Dispose();
        }

        return matches.Count == 1
            ? matches[0]
            : throw new GpioUnavailableException(WhyNot(
                name, matches.Count, chips.ConvertAll(chip => byNumber ? chip.Path : chip.Label), refusals));
    }

    /// <summary>Why a chip cannot be had, and what to do.</summary>
    /// <param name="name">Its label or device file.</param>
    /// <param name="matches">How many there are.</param>
    /// <param name="present">What the chips that are there are called, in the same manner.</param>
    /// <param name="refusals">Why others could not be opened.</param>
    internal static string WhyNot(string name, int matches, List<string> present, List<string> refusals)
    {
        if (matches > 1)
        {
            return $"{matches} GPIO chips are labelled '{name}', so it is unclear which is meant: unplug one, use a chip "
                + "whose label is its own, or write the number of the one that is meant.";
        }

        var chip = IsNumbered(name) ? $"GPIO chip {name}" : $"GPIO chip labelled '{name}'";

        var reasons = string.Join(' ', refusals);
        if (present.Count == 0)
        {
            return refusals.Count > 0
                ? $"No {chip} could be opened. {reasons}"
                : $"No {chip}: this machine has no GPIO chip ({Folder}/{Pattern}). Connect it, run on "
                + "the board, or have the rack file simulate its I/O.";
        }

        return $"No {chip}. Chips here: {string.Join(", ", present.Select(found => $"'{found}'"))}. Correct the chip in the rack file, or "
            + "connect it."
            + (refusals.Count > 0 ? " Not opened: " + reasons : "");
    }

    private static bool IsNumbered(string name) => name.StartsWith(GpioLine.NumberedChip, StringComparison.Ordinal);

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
