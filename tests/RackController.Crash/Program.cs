using System.Globalization;
using RackController.Crash;

// Kills the service again and again and judges by what is left. `tests/crash` calls it.
if (args is not [var program, var rackFile, var library, var work, var disk, var rounds, var seedText])
{
    Console.Error.WriteLine("usage: RackController.Crash PROGRAM RACK-FILE CLOCK-LIBRARY WORK-FOLDER mounted|limited ROUNDS SEED");
    return 2;
}

var seed = int.Parse(seedText, CultureInfo.InvariantCulture);
Console.WriteLine($"crash: seed {seed}; the same one draws the same moments again");

// Two minutes before the window in which one of the racks is flooded.
var clock = new MovableClock(library, Path.Combine(work, "clock"), new DateTimeOffset(2026, 6, 1, 6, 58, 0, TimeSpan.Zero));
var state = Path.Combine(work, "disk");
var tally = new Tally();
var setting = new Setting(program, rackFile, work, disk == "mounted" ? new MountedDisk(state) : new LimitedFiles(), clock);
var campaign = new Campaign(setting, Directory.CreateDirectory(Path.Combine(state, "state")).FullName, new Random(seed), tally);
campaign.LiveUntilLatched();
for (var round = 1; round <= int.Parse(rounds, CultureInfo.InvariantCulture); round++)
{
    campaign.Run(round);
}

tally.Holds("acknowledgments are heard", campaign.Acknowledged > 0 ? null : "no status line ever counted events");
Console.WriteLine($"crash: {campaign.Acknowledged} events were acknowledged");
Console.WriteLine($"crash: {tally.Passed} passed, {tally.Failed} failed");
return tally.Failed == 0 ? 0 : 1;
