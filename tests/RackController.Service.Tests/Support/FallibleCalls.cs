namespace RackController.Service.Tests;

/// <summary>
/// Every call out of the service that can fail, and what shows that its failure leaves no relay on, is told, and is got over. A test of
/// the house reads this list, and fails when the source makes a call that has no entry, or an entry has lost its call. The kernel's GPIO
/// requests are made to fail by their driver, which is where the service meets them.
/// </summary>
internal static class FallibleCalls
{
    public static readonly (string Call, string ShownBy)[] All =
    [
        // Relays and contacts.
        Fails("Hardware LibC.ioctl", nameof(FailingCallTests.ARelayCannotBeWritten)),
        Fails("HeldLine: ioctl GetLineValues", nameof(FailingCallTests.AContactCannotBeRead)),
        Fails("HeldLine: ioctl SetLineValues", nameof(FailingCallTests.ARelayCannotBeWritten)),
        Fails("HeldLine: ioctl GetLine", nameof(FailingCallTests.ARelayCanBeWrittenAndNotBeClaimedAgain)),
        Fails("HeldLine: ioctl SetLineConfig", nameof(FailingCallTests.EdgesCannotBeWatchedAgain)),
        NoHarm(
            "HeldLine: ioctl GetLineInfo",
            "asked for names before anything is driven, where the start ends with a line and exit code 3; later only for who holds a line "
            + "that was refused, which is told"),
        Fails("GpioChips: ioctl GetChipInfo", nameof(FailingCallTests.TheChipOfTheContactsIsGone)),
        Fails("Hardware LibC.EventFd", nameof(FailingCallTests.EdgesCannotBeWatchedAgain)),
        NoHarm("Hardware LibC.Poll", "an edge only wakes the scan early; the level is polled at every scan"),
        NoHarm("Hardware LibC.Read", "the same: what is not fetched of an edge is seen by the next scan"),
        Fails("Hardware LibC.Write", nameof(FailingCallTests.EdgesCannotBeWatchedAgain)),
        Fails("GpioChips: Directory.GetFiles", nameof(FailingCallTests.TheChipOfTheContactsIsGone)),
        Fails("GpioChips: File.ResolveLinkTarget", nameof(FailingCallTests.TheChipOfTheContactsIsGone)),
        Fails("GpioChips: File.OpenHandle", nameof(FailingCallTests.TheChipOfTheContactsIsGone)),
        NoHarm(
            "GpioRackIo: I2cDevice.Create",
            "on the thread of its bus: a sensor is unknown meanwhile, and a relay's line does not follow, which is told; BusPartOnDemand "
            + "and ExpanderLines open it again"),

        NoHarm(
            "OneWireThermometer: File.ReadAllText",
            "on the thread of its bus: the sensor is unknown meanwhile, and asked again a second later"),

        // Clocks and sleep.
        Fails("Service LibC.ClockGetTime", nameof(ScanThreadTests.AClockThatFailsEndsTheScanWithEveryLoadSafe)),
        NoHarm("Service LibC.AdjTimex", "an error answers that nothing vouches for the wall clock, which is then not trusted"),
        NoHarm("Service LibC.EventFd", "asked for once, before anything is driven: the start ends with a line and exit code 3"),
        NoHarm("Service LibC.PPoll", "a sleep that ends at once: scans come more often, on the same clock"),
        NoHarm("Service LibC.Read", "the wake that was not taken ends the next sleep too"),
        NoHarm("Service LibC.Write", "a wake that is lost waits for the next scan, a tenth of a second away"),
        NoHarm("Service LibC.Close", "the process ends"),
        NoHarm("WallTrust: Directory.EnumerateDirectories", "caught: nothing vouches for the wall clock, which is then not trusted"),
        NoHarm("WallTrust: Directory.Exists", "answers no: nothing vouches for the wall clock"),
        NoHarm("WallTrust: File.Exists", "answers no: nothing vouches for the wall clock"),
        NoHarm("WallTrust: File.ReadAllText", "caught: nothing vouches for the wall clock, which is then not trusted"),

        // The state folder and its lock.
        Fails(
            "FolderAndLock: Directory.CreateDirectory",
            nameof(RackLockTests.AFolderThatCannotBeMadeIsATroubleAndNoReasonToLeaveARackUndriven)),
        Fails("Service LibC.Open", nameof(RackLockTests.ALockFileThatCannotBeOpenedOrLockedIsAnErrorOfTheDisk)),
        Fails("Service LibC.FLock", nameof(RackLockTests.ASecondControllerIsRefusedInOneLineThatNamesTheFirst)),
        Fails("RackLock: RandomAccess.SetLength", nameof(RackLockTests.AFullDiskDoesNotTakeTheLockAway)),
        Fails("RackLock: RandomAccess.Write", nameof(RackLockTests.AFullDiskDoesNotTakeTheLockAway)),
        Fails("RackLock: RandomAccess.Read", nameof(RackLockTests.AFullDiskDoesNotTakeTheLockAway)),
        NoHarm("UnusedMemory: File.ReadLines", "caught: more stays in memory than is used, which is told"),
        NoHarm("Service LibC.MAdvise", "what the kernel does not take back stays in memory"),
        Fails("Housekeeper: File.Exists", nameof(HousekeeperTests.ALockFileThatVanishesIsAnAlarm)),
        Fails("Housekeeper: new DriveInfo", nameof(HousekeeperTests.ADiskThatCannotTellItsRoomIsAnAlarm)),

        // The journal while the rack is driven.
        Fails("Statement: ExecuteNonQuery", nameof(FailingCallTests.TheJournalTakesNoMore)),
        Fails("JournalFile: ExecuteNonQuery", nameof(FailingCallTests.TheJournalTakesNoMore)),
        Fails("JournalFile: ExecuteScalar", nameof(FailingCallTests.AnotherProgramHoldsTheJournal)),
        Fails("RecordingTables: ExecuteReader", nameof(FailingCallTests.TheJournalTakesNoMore)),
        Fails("RecordingTables: ExecuteScalar", nameof(FailingCallTests.TheJournalTakesNoMore)),
        Fails("Journal: File.Exists", nameof(FailingCallTests.TheStateFolderVanishesWhileTheRackIsDriven)),

        // The journal where it is opened, at the start and after trouble.
        Fails(
            "JournalFile: new SqliteConnection",
            nameof(JournalOpeningTests.AFolderThatIsNotThereLeavesTheControllerWithoutAJournalAndSaysWhy)),
        Fails("JournalFile: File.Exists", nameof(FailingCallTests.TheStateFolderVanishesWhileTheRackIsDriven)),
        Fails("JournalFile: File.Delete", nameof(RackServiceTests.AStateFolderThatCannotBeWrittenIsAnAlarmAndTheRackIsDriven)),
        Fails("JournalFile: File.Move", nameof(RackServiceTests.AStateFolderThatCannotBeWrittenIsAnAlarmAndTheRackIsDriven)),
        Fails("JournalOpening: Connect", nameof(JournalOpeningTests.AFileThatIsNoDatabaseIsPutAside)),
        Fails(
            "JournalOpening: Directory.CreateDirectory",
            nameof(JournalTests.AJournalWhoseFolderCannotBeMadeIsAnAlarmAndNothingIsLostOnceItCan)),
        Fails("JournalOpening: File.Exists", nameof(JournalOpeningTests.ALogWhoseJournalIsGoneIsPutAside)),
        Fails("JournalOpening: File.Move", nameof(JournalOpeningTests.AJournalThatCannotBePutAsideLeavesTheControllerWithoutOne)),
        Fails("JournalMemory: ExecuteReader", nameof(JournalOpeningTests.WhatCouldNotBeReadAtTheStartIsNeverWrittenOver)),
        Fails("JournalMemory: ExecuteScalar", nameof(JournalOpeningTests.WhatCouldNotBeReadAtTheStartIsNeverWrittenOver)),
        Fails("JournalGlance: Connect", nameof(JournalRescueTests.AFullDiskStillTellsWhatIsRemembered)),
        Fails("JournalGlance: ExecuteNonQuery", nameof(JournalOpeningTests.WhatCouldNotBeReadAtTheStartIsNeverWrittenOver)),
        NoHarm("JournalGlance: new FileInfo", "answers no: the journal is then opened as it is, or is not"),
        Fails("JournalSalvage: Connect", nameof(JournalOpeningTests.AFolderThatIsNotThereLeavesTheControllerWithoutAJournalAndSaysWhy)),
        Fails("JournalSalvage: ExecuteNonQuery", nameof(JournalOpeningTests.AFileThatIsNoDatabaseIsPutAside)),
        Fails("JournalSalvage: ExecuteReader", nameof(JournalOpeningTests.AFileThatIsNoDatabaseIsPutAside)),
        Fails("JournalRescue: File.Delete", nameof(JournalRescueTests.ADiskWithoutRoomForARescueKeepsTheBrokenJournalAndWhatItRemembers)),
        Fails("JournalRescue: File.Exists", nameof(JournalRescueTests.AKillAfterTheBrokenJournalWasPutAsideLosesNothing)),
        Fails("JournalRescue: File.Move", nameof(JournalRescueTests.AKillAfterTheBrokenJournalWasPutAsideLosesNothing)),
        Fails("JournalSchema: ExecuteNonQuery", nameof(FailingCallTests.TheJournalTakesNoMore)),
        Fails("JournalSchema: ExecuteScalar", nameof(JournalOpeningTests.WhatCouldNotBeReadAtTheStartIsNeverWrittenOver)),

        // The operational log, which is not the journal.
        Fails("ServiceLog: WriteTo.File", nameof(RackServiceTests.ADiskThatFillsUpKeepsNoRunFromEndingAsItShould)),
        NoHarm("ServiceLog: WriteTo.Console", "a line that cannot be written is let go, and the journal keeps what it said"),
        NoHarm("ServiceLog: WriteTo.Sink", "the same"),
        NoHarm("ServiceLog: Console.Out", "the same: it is what the sink writes to"),
        NoHarm("ServiceLog: Console.Error", "the last line of a process whose loads are safe"),
        NoHarm("ServiceLog: Console.Error.WriteLine", "the last line of a process whose loads are safe"),

        // Files that the page changes, off the scan: what fails is told there, and the old file stays.
        Fails("WholeFile: new FileStream", nameof(WholeFileTests.WhatCannotBeWrittenLeavesTheFileAsItWas)),
        Fails("WholeFile: new StreamWriter", nameof(WholeFileTests.WhatCannotBeWrittenLeavesTheFileAsItWas)),
        Fails("WholeFile: File.Move", nameof(WholeFileTests.WhatCannotBePutInPlaceLeavesTheFileAsItWas)),
        NoHarm("WholeFile: File.Exists", "answers no: a file is then made anew"),
        NoHarm("WholeFile: File.ResolveLinkTarget", "told to whoever asked for the file to be changed"),
        NoHarm("WholeFile: File.SetUnixFileMode", "told to whoever asked for the file to be changed"),
        NoHarm("WholeFile: File.GetUnixFileMode", "told to whoever asked for the file to be changed"),
        NoHarm("Service LibC.FSync", "told to whoever asked for the file to be changed"),
        Fails("BookFile: Connect", nameof(BookFileTests.AFileThatIsNoBookIsToldAndLeftAsItIs)),
        Fails("BookFile: ExecuteReader", nameof(BookFileTests.AFileThatIsNoBookIsToldAndLeftAsItIs)),
        Fails("BookFile: ExecuteNonQuery", nameof(BookFileTests.AFullDiskKeepsNothingOfAnEntryAndSaysSo)),
        Fails("BookFile: ExecuteScalar", nameof(BookFileTests.AFullDiskKeepsNothingOfAnEntryAndSaysSo)),
        NoHarm(
            "BookFile: File.Exists", "answers no: a book that cannot be seen is empty, and its first entry tells why it cannot be written"),
        NoHarm("BookDesk: File.GetLastWriteTimeUtc", "told to whoever looks at the book; schedules stay as they are"),
        NoHarm("BookDesk: new FileInfo", "told to whoever looks at the book; schedules stay as they are"),
        NoHarm("RackFileShelf: File.ReadAllText", "told to whoever asked for the file to be changed"),
        NoHarm("RackFileShelf: Directory.Exists", "answers no: there is no earlier version"),
        NoHarm("RackFileShelf: Directory.EnumerateFiles", "told to whoever asked for the file to be changed"),
        NoHarm("RackFileShelf: Directory.CreateDirectory", "told to whoever asked for the file to be changed, which stays as it was"),
        NoHarm("RackFileShelf: File.Delete", "told to whoever asked for the file to be changed; a version more is kept"),

        // What the process that sends notices reads, and what the page reads of it.
        Fails("SignOfLife: File.WriteAllText", nameof(SignOfLifeTests.WhereNoSignCanBeGivenThatIsSaidAndNothingElseHappens)),
        NoHarm("SignOfLife: File.Move", "the same"),
        NoHarm("SignOfLife: File.ReadAllText", "caught: there is no sign, which is told; the page or another process asks"),
        NoHarm("NoticesStatus: File.ReadAllText", "caught: the page says that nothing is known"),

        // The supervisor.
        Fails("Supervisor: Connect", nameof(HousekeeperTests.ASupervisorThatCannotBeReachedAtTheStartIsAnAlarm)),
        Fails("Supervisor: Send", nameof(HousekeeperTests.ASupervisorThatCannotBeToldIsAnAlarm)),
        NoHarm("Supervisor: new Socket", "asked for once, before anything is driven: the start ends with a line and exit code 3"),

        // What reads a journal beside the service drives nothing; it ends with a line and an exit code.
        NoHarm("JournalRecord: Directory.Exists", "a replay drives nothing"),
        NoHarm("JournalRecord: ExecuteReader", "a replay drives nothing"),
        NoHarm("JournalRecord: File.Exists", "a replay drives nothing"),
        Fails("JournalHistory: Connect", nameof(JournalHistoryTests.AFileThatIsNoJournalIsOneClearLine)),
        Fails("JournalHistory: ExecuteReader", nameof(JournalHistoryTests.ADamagedJournalIsOneClearLine)),
        Fails("JournalHistory: File.Exists", nameof(JournalHistoryTests.AJournalThatIsNotThereIsOneClearLine)),
        NoHarm("HostCheckup: File.Exists", "a checkup drives nothing"),
        NoHarm("Service LibC.Access", "a checkup drives nothing"),
        NoHarm("HostCheckup: new DriveInfo", "a checkup drives nothing"),
        NoHarm("HostCheckup: new SqliteConnection", "a checkup drives nothing"),
        NoHarm("Machine: File.ReadAllLines", "a checkup drives nothing"),
        NoHarm("Machine: Directory.Exists", "a checkup drives nothing"),
        NoHarm("Machine: Directory.GetDirectories", "a checkup drives nothing"),
        NoHarm("Machine: new FileStream", "a checkup drives nothing"),
        NoHarm("ProofTestRecord: Connect", "a list of proof tests drives nothing"),
        NoHarm("StateFolder: Directory.Exists", "asked by whoever looks at a rack, before anything; nobody drives by it"),
        NoHarm("ProofTestRecord: File.Exists", "a list of proof tests drives nothing"),
        NoHarm("Service LibC.StatX", "told to whoever put something into the folder of the service"),
        NoHarm("Service LibC.ChangeOwner", "told to whoever put something into the folder of the service"),
    ];

    private static (string Call, string ShownBy) Fails(string call, string test) => (call, test);

    private static (string Call, string ShownBy) NoHarm(string call, string why) => (call, why);
}
