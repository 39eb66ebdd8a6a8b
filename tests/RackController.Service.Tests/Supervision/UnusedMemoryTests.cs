namespace RackController.Service.Tests;

public sealed class UnusedMemoryTests
{
    private const string Folder = "/usr/lib/rackcontroller";
    private const string Program = $"{Folder}/rackcontroller-service";

    /// <summary>Laid out as <c>proc_pid_smaps(5)</c> of the Linux manual pages has it.</summary>
    [Fact]
    public void OnlyWhatCannotBeWrittenAndWasNeverChangedIsLetGoOf()
    {
        string[] smaps =
        [
            .. Mapped("00400000-00404000 r--p 00000000 fe:00 11722793", Program, anonymousKb: 0),
            .. Mapped("00404000-01156000 r-xp 00004000 fe:00 11722793", Program, anonymousKb: 0),
            .. Mapped("01bf9000-01bfb000 r--p 017f8000 fe:00 11722793", Program, anonymousKb: 8),
            .. Mapped("01bfb000-026a6000 rw-p 017fa000 fe:00 11722793", Program, anonymousKb: 0),
            .. Mapped("026a6000-02721000 rw-p 00000000 00:00 0", "", anonymousKb: 124),
            .. Mapped("7f8dd0a59000-7f8dd0a6b000 r--p 00000000 fe:00 11722795", $"{Folder}/libe_sqlite3.so", anonymousKb: 0),
            .. Mapped("7f8dd1cd7000-7f8dd1e2d000 r-xp 00022000 fe:00 2099", "/usr/lib/x86_64-linux-gnu/libc.so.6", anonymousKb: 0),
            .. Mapped("7f8dd1f00000-7f8dd1f08000 r--s 00000000 00:15 77", $"{Folder}/shared", anonymousKb: 0),
            .. Mapped("7ffc4c1f5000-7ffc4c1f9000 r--p 00000000 00:00 0", "[vvar]", anonymousKb: 0),
        ];

        Assert.Equal(
            [(0x400000, 0x404000), (0x404000, 0x1156000), (0x7f8dd0a59000, 0x7f8dd0a6b000)],
            UnusedMemory.AsInTheFile(smaps, Folder).Select(found => ((long)found.Start, (long)found.End)));
    }

    [Fact]
    public void TheProgramGoesOnWithoutWhatItLetGoOf()
    {
        Assert.True(UnusedMemory.LetGoOfFiles() > 0);
        Assert.Null(UnusedMemory.LetGo());
    }

    // The lines between are those that matter to nobody here.
    private static string[] Mapped(string header, string file, int anonymousKb) =>
    [
        $"{header}                    {file}",
        "Size:              10600 kB",
        "Pss:               10532 kB",
        "Private_Dirty:         0 kB",
        "Referenced:         1292 kB",
        $"Anonymous:         {anonymousKb,8} kB",
        "AnonHugePages:         0 kB",
        "VmFlags: rd ex mr mw me",
    ];
}
