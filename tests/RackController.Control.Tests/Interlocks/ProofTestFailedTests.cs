using RackController.Model;

using NodaTime;
using RackController.Control.Tests.ProofTests;

namespace RackController.Control.Tests.Interlocks;

/// <summary>Row proof-test-failed.</summary>
public class ProofTestFailedTests
{
    private const string Key = "north/proof-test-failed";
    private const string Rope = "north/leak rope";
    private readonly Rig rig = new(ProofSite.Whole);

    public ProofTestFailedTests()
    {
        rig.ScanFor(Duration.FromMinutes(3));
        rig.Scan(new BeginProofTest("Ada", Rope));
        rig.LeapFor(Duration.FromMinutes(2));
    }

    [Fact]
    public void AFailedTestIsAnAlarm()
    {
        Assert.Equal($"{Rope} failed its proof test", rig.Alarm(Key)!.Cause);
        Assert.Equal(AlarmPriority.High, rig.Alarm(Key)!.Priority);
        Assert.Null(rig.Alarm("sockets/proof-test-failed"));
    }

    [Fact]
    public void ItReturnsOnceTheTestIsPassed()
    {
        rig.TestContact(Rope);
        Assert.Equal(AlarmState.ReturnedUnacknowledged, rig.Alarm(Key)!.State);
        Assert.Equal($"{Rope} passed its proof test", rig.Alarm(Key)!.Cause);
    }

    [Fact]
    public void ItSurvivesARestart()
    {
        rig.Restart(Duration.FromDays(1));
        rig.ScanFor(Duration.FromSeconds(1));
        Assert.Equal(AlarmState.Unacknowledged, rig.Alarm(Key)!.State);
    }
}
