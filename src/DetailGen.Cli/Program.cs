using DetailGen.Cli.Verbs;

return CommandLine.Run(args, Console.Out, Console.Error);
