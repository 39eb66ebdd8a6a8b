using NodaTime;
using RackController.Model;
using RackController.Service;

namespace RackController.Notices.Tests;

public sealed class NoticesCheckupTests : IDisposable
{
    private readonly DirectoryInfo root = Directory.CreateTempSubdirectory("rackcontroller-notices-");

    private readonly NoticePlan plan = new()
    {
        RemindAfter = Duration.FromMinutes(30),
        Mail =
        [
            new MailPlan("grower@home.example", "rack@home.example", "127.0.0.1", 25, MailSecurity.None, AlarmPriority.Low)
            {
                SignIn = new MailSignIn("rack", "/etc/not-there"),
            },
        ],
        Alive = new AlivePlan(new Uri("https://nobody.example/alive"), Duration.FromMinutes(5)),
    };

    private StateFolder Folder => new(root.FullName);

    public void Dispose() => root.Delete(recursive: true);

    [Fact]
    public void WhereNoNoticesAreAskedForThereIsNothingToSay() =>
        Assert.Empty(NoticesCheckup.Look(Cellar.Site, Folder, root.FullName));

    [Fact]
    public void WhatIsMissingIsNamedWithWhatToDo()
    {
        Assert.Contains("/etc/not-there is not there", Doubt("secret of notices"), StringComparison.Ordinal);
        Assert.Contains("cannot be resolved", Doubt("server nobody.example"), StringComparison.Ordinal);
        Assert.Contains("systemctl enable --now rackcontroller-notices", Doubt("notices"), StringComparison.Ordinal);
    }

    [Fact]
    public void AUnitThatIsEnabledAndSilentIsAskedFor()
    {
        var wants = Directory.CreateDirectory(Path.Combine(root.FullName, "etc/systemd/system/multi-user.target.wants"));
        File.WriteAllText(Path.Combine(wants.FullName, "rackcontroller-notices.service"), "");

        Assert.Contains("systemctl status", Doubt("notices"), StringComparison.Ordinal);
    }

    [Fact]
    public void AProcessThatGivesSignsOfLifeIsSound()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Folder.NoticesAlive)!);
        Assert.Null(SignOfLife.At(Folder.NoticesAlive).Give());

        Assert.Equal(FindingWeight.Sound, Of("notices").Weight);
    }

    private Finding Of(string subject) =>
        NoticesCheckup.Look(Cellar.Site with { Notices = plan }, Folder, root.FullName).Single(finding => finding.Subject == subject);

    private string Doubt(string subject)
    {
        var finding = Of(subject);
        Assert.Equal(FindingWeight.Doubtful, finding.Weight);
        return finding.Text;
    }
}
