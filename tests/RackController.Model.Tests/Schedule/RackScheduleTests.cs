using NodaTime;

namespace RackController.Model.Tests.Schedule;

public class RackScheduleTests
{
    // By hand: floods begin at 0, 4, 8 and 12 h; one at 16 h would begin at the end of the window and so does not.
    [Theory]
    [InlineData(4, 16, 4)]
    [InlineData(5, 16, 4)]
    [InlineData(24, 1, 1)]
    [InlineData(1, 24, 24)]
    public void AWindowHoldsTheFloodsThatBeginBeforeItsEnd(int intervalH, int lengthH, int count) => Assert.Equal(
        count, new FloodsEvery(Duration.FromHours(intervalH), new LocalTime(6, 0), Duration.FromHours(lengthH)).Count);
}
