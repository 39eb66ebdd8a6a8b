using System.Net;

namespace RackController.Page.Tests;

public sealed class LockoutTests
{
    private readonly SetTime time = new();
    private readonly Lockouts lockouts;

    public LockoutTests() => lockouts = new Lockouts(time);

    [Fact]
    public void AfterFiveInARowTheWaitDoublesToAnHour()
    {
        Fail(Lockouts.Free);
        foreach (var minutes in new[] { 1, 2, 4, 8, 16, 32, 60, 60 })
        {
            Assert.Equal(TimeSpan.FromMinutes(minutes), Wait());
            time.Pass(TimeSpan.FromMinutes(minutes));
            Fail(1);
        }
    }

    [Fact]
    public void WhoWaitsInVainIsNotMadeToWaitLonger()
    {
        Fail(Lockouts.Free);
        for (var i = 0; i < 100; i++)
        {
            Assert.True(Wait() > TimeSpan.Zero);
        }

        time.Pass(TimeSpan.FromMinutes(1));
        Assert.Equal(TimeSpan.Zero, Wait());
    }

    [Fact]
    public void ARightOneBeginsAnew()
    {
        Fail(Lockouts.Free - 1);
        lockouts.Succeeded("name ada", "from here");

        Fail(Lockouts.Free);
    }

    [Fact]
    public void ANameIsHeldFromWhereverSomebodyTries()
    {
        for (var i = 0; i < Lockouts.Free; i++)
        {
            Assert.Equal(TimeSpan.Zero, lockouts.Begin("name ada", $"from {i}").Wait);
        }

        Assert.True(lockouts.Begin("name ADA", "from elsewhere").Wait > TimeSpan.Zero);
        Assert.Equal(TimeSpan.Zero, lockouts.Begin("name ben", "from elsewhere").Wait);
    }

    [Fact]
    public void AnAddressIsHeldForWhateverName()
    {
        for (var i = 0; i < Lockouts.Free; i++)
        {
            Assert.Equal(TimeSpan.Zero, lockouts.Begin($"name {i}", "from here").Wait);
        }

        Assert.True(lockouts.Begin("name ben", "from here").Wait > TimeSpan.Zero);
    }

    [Fact]
    public void ManyAtOnceAreNoWayAround()
    {
        var attempts = new System.Collections.Concurrent.ConcurrentBag<Attempt>();
        Parallel.For(0, 50, _ => attempts.Add(lockouts.Begin("name ada", "from here")));

        Assert.Equal(Lockouts.Free, attempts.Count(attempt => attempt.Wait == TimeSpan.Zero));
    }

    // RFC 6177: a site has a /64 or more, so whoever has one address of it has all.
    [Fact]
    public void AllAddressesOfOneIpv6NetworkAreOne()
    {
        Assert.Equal(AddressWords.Counted(IPAddress.Parse("2001:db8::1")), AddressWords.Counted(IPAddress.Parse("2001:db8::ffff:1:2")));
        Assert.NotEqual(AddressWords.Counted(IPAddress.Parse("2001:db8:0:1::1")), AddressWords.Counted(IPAddress.Parse("2001:db8::1")));
        Assert.Equal(AddressWords.Counted(IPAddress.Parse("::ffff:192.0.2.1")), AddressWords.Counted(IPAddress.Parse("192.0.2.1")));
    }

    [Fact]
    public void ABucketOfRequestsRunsDryAndFills()
    {
        var pace = new RequestPace(time);
        var (one, other) = (IPAddress.Parse("192.0.2.1"), IPAddress.Parse("192.0.2.2"));

        Assert.Equal(RequestPace.AtOnce, Enumerable.Range(0, RequestPace.AtOnce * 2).Count(_ => pace.TryTake(one)));
        Assert.True(pace.TryTake(other));
        time.Pass(TimeSpan.FromSeconds(1));
        Assert.Equal(RequestPace.PerS, Enumerable.Range(0, RequestPace.AtOnce).Count(_ => pace.TryTake(one)));
    }

    private TimeSpan Wait() => lockouts.Begin("name ada", "from here").Wait;

    private void Fail(int times)
    {
        for (var i = 0; i < times; i++)
        {
            Assert.Equal(TimeSpan.Zero, Wait());
        }
    }

    private sealed class SetTime : TimeProvider
    {
        private long now = 1_000_000;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public void Pass(TimeSpan length) => now += length.Ticks;

        public override long GetTimestamp() => now;
    }
}
