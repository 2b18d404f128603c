package ortet.line;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Holds a job against its command. */
public final class JobsTried {
    private JobsTried() {}

    /** Return what is wrong with a job: no command, no place for an answer, a question missing that must be answered. */
    public static List<String> wrong(Commands commands, Job job) {
        if (commands.named(job.command()).isEmpty()) {
            return List.of(job.name() + ": no command " + job.command());
        }
        List<String> wrong = new ArrayList<>();
        Set<String> asked = job.steps().stream().map(Job.Step::place).collect(Collectors.toSet());
        MethodCommand command = commands.named(job.command()).get();
        Set<String> places = command.slots().stream()
                .map(slot -> slot.isOption() ? slot.longName() : slot.word())
                .collect(Collectors.toSet());
        for (Job.Step step : job.steps()) {
            if (!places.contains(step.place())) {
                wrong.add(job.name() + ": " + job.command() + " takes no " + step.place());
            }
            if (step.after().filter(other -> !asked.contains(other)).isPresent()) {
                wrong.add(job.name() + ": " + step.place() + " waits for a question that is not asked");
            }
        }
        command.slots().stream()
                .filter(Slot::required)
                .map(slot -> slot.isOption() ? slot.longName() : slot.word())
                .filter(place -> !asked.contains(place))
                .forEach(place -> wrong.add(job.name() + ": does not ask for " + place));
        return wrong;
    }
}
