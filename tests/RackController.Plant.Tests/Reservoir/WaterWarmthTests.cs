namespace RackController.Plant.Tests;

public class WaterWarmthTests
{
    [Fact]
    public void ThePumpsPowerWarmsTheWater()
    {
        // 4184 J warm a litre by a kelvin: 60 W warm 200 L by 0.2581 K in an hour. Closed form.
        Assert.Equal(0.2581, WaterWarmth.WarmingKPerS(60, 0.2) * 3600, 1e-4);
    }

    [Fact]
    public void WaterFollowsTheRoomAndAnEmptyTankDoesNotJump()
    {
        Assert.True(WaterWarmth.FromRoomW(22, 19) > 0);
        Assert.Equal(0, WaterWarmth.FromRoomW(20, 20));
        Assert.True(double.IsFinite(WaterWarmth.WarmingKPerS(60, 0)));
    }
}
