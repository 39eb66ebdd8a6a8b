using System.Globalization;
using RackController.Fuzz;
using SharpFuzz;

// Gives readers what a fuzzer makes up. `tests/fuzz` calls it; the first argument names what is read, the second how.
Coverage.Begin();
var ground = Directory.CreateTempSubdirectory("rackcontroller-fuzz-");
try
{
    if (args is not [var name, var how, .. var rest]
        || Target.All(ground.FullName).FirstOrDefault(each => each.Name == name) is not { } target)
    {
        Console.Error.WriteLine(
            "usage: RackController.Fuzz rack-file|scenario|orders|crops|journal "
            + "(afl | files FILE... | loop SECONDS CORPUS FINDINGS WORDS)");
        return 2;
    }

    switch (how)
    {
        case "afl":
            Fuzzer.Run(stream =>
            {
                using var input = new MemoryStream();
                stream.CopyTo(input);
                target.Read(input.ToArray());
            });
            return 0;
        case "files":
            return Files.Read(target, rest);
        default:
            return Loop.Run(target, TimeSpan.FromSeconds(double.Parse(rest[0], CultureInfo.InvariantCulture)), rest[1], rest[2], rest[3]);
    }
}
finally
{
    ground.Delete(recursive: true);
}
