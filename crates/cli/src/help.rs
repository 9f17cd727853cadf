//! What the command line says about itself.

/// What help is wanted on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Topic {
    Everything,
    Assess,
    Report,
    Check,
    Network,
    Simulate,
    Evaluate,
}

pub(crate) const fn text(topic: Topic) -> &'static str {
    match topic {
        Topic::Everything => EVERYTHING,
        Topic::Assess => ASSESS,
        Topic::Report => REPORT,
        Topic::Check => CHECK,
        Topic::Network => NETWORK,
        Topic::Simulate => SIMULATE,
        Topic::Evaluate => EVALUATE,
    }
}

const EVERYTHING: &str = "\
coldcase: why a freezer or refrigerator won't get cold, from a job file

  coldcase assess FILE...   say what the readings show and what to do next
  coldcase report FILE      write the record that goes with the machine
  coldcase check FILE...    say whether these files are jobs
  coldcase network FILE     print the networks in which it is weighed
  coldcase simulate FILE    write a job about a simulated machine, and print the truth
  coldcase evaluate         how this way of working fares on simulated machines
  coldcase COMMAND --help   say more about one of them
  coldcase --version        say which version this is

A FILE is a job shared from the page; - stands for standard input.

Exit code: 0 done; 1 (assess only) a machine must not be powered; 2 a file, or the
command, could not be read.
";

const ASSESS: &str = "\
coldcase assess [--json] [--decimal point|comma] [--at TIME] FILE...

Says what the readings in each job show: the same text as on the page.

  --json           print a JSON list instead, with one object for each file. Its form is
                   described by the schema public/assessment.schema.json.
  --decimal MARK   write numbers in words with a point (4.7) or a comma (4,7). Point if
                   not said.
  --at TIME        assess as of that time, for example 2026-11-25T13:05:00+01:00. Now if
                   not said. Only what waits for something to cool depends on it.

A FILE of - is standard input. What the program could not read in a file is told on
standard error.

Exit code: 0 done; 1 a machine must not be powered; 2 a file, or the command, could not
be read.
";

const REPORT: &str = "\
coldcase report [--html] [--owner] [--decimal point|comma] [--at TIME] FILE

Writes the record that goes with a machine to standard output: what was wrong, measured,
done and proved, what the next owner has to mind, and what was never tested.

  --html           as one HTML file that needs nothing else, to be read, printed or sent
                   along. Plain text with the same contents if not said.
  --owner          with private notes, costs and figures of one's own. Without them, for a
                   buyer, if not said.
  --decimal MARK   write numbers with a point (4.7) or a comma (4,7). Point if not said.
  --at TIME        as of that time, as for assess.

A FILE of - is standard input.

Exit code: 0 done, whatever it says; 2 the file, or the command, could not be read.
";

const CHECK: &str = "\
coldcase check FILE...

Says whether each file is a job that this program can read, and what in it, if anything,
it can't. A FILE of - is standard input. Nothing is changed.

Exit code: 0 all are; 2 a file, or the command, could not be read.
";

const NETWORK: &str = "\
coldcase network [--at TIME] FILE

Prints the Bayesian networks in which a job is weighed, one for each build that the machine
may have, in Bayesian network interchange format (BIF), so that another program can check
the odds. Comments in front of each say how likely the build is and which states were seen.

  --at TIME        as of that time, as for assess.

A FILE of - is standard input.

Exit code: 0 done; 2 the file, or the command, could not be read.
";

const SIMULATE: &str = "\
coldcase simulate [--seed S] [--number N] [--meter basic|good] FILE

Draws a machine that is offered as faulty, examines it by the app's own next check until
enough is known, writes that job into FILE, and prints what is truly wrong. An existing
FILE is written over.

  --seed S         another series of machines; 1 if not said.
  --number N       which machine of the series; 0 if not said.
  --meter KIND     with a basic meter or a good one; basic if not said.
  --both-meters    every other machine with a good one, and a table by meter.

Exit code: 0 done; 2 the file can't be written, or the command could not be read.
";

const EVALUATE: &str = "\
coldcase evaluate [--machines N] [--seed S] [--meter basic|good] [--both-meters] [--json]

Lets the app's own choice of checks examine N simulated machines until it says that enough
is known, and the same machines by a fixed checklist and in any order, and prints how often
each is right, by fault and by kind of machine, how honest its odds are, and how long it
takes. From 200 machines on it says too how often the best answer to the same readings
would be right, as far as that can be learned from the machines themselves. The same
numbers give the same figures.

  --machines N     how many; 2,000 if not said, which takes some minutes.
  --seed S         another series of machines; 1 if not said.
  --meter KIND     with a basic meter or a good one; basic if not said.
  --both-meters    every other machine with a good one, and a table by meter.
  --json           print the main figures as a JSON object instead.

Exit code: 0 done; 2 the command could not be read.
";
