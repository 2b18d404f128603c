package ortet.line;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import ortet.screen.Screen;
import ortet.value.When;

/**
 * Walks through a job, a question at a time, shows what was answered and the line that says the same, and has it run.
 *
 * <p>An empty answer leaves out what need not be told; {@code ?} explains, {@code <} goes back, {@code -} takes an answer
 * out again. Each answer is checked when it is given, as far as that can be done without the others.
 */
public final class Interview {
    private static final String EXPLAIN = "?";
    private static final String BACK = "<";
    private static final String NOTHING = "-";
    private static final String MORE = "more";

    private final Commands commands;
    private final Attendant attendant;
    private final Completion completion;

    /** Make one who knows these commands, beside an attendant. */
    public Interview(Commands commands, Attendant attendant) {
        this.commands = commands;
        this.attendant = attendant;
        this.completion = new Completion(commands, attendant);
    }

    /**
     * Walk through a job.
     *
     * @param more words to add to the line, such as the book that is meant
     * @param run runs a line and tells whether it was done; where it was not, answers can be changed
     * @return whether it was done; else the user dropped it
     */
    public boolean walk(Job job, List<String> more, Talk talk, Screen screen, Predicate<List<String>> run) {
        MethodCommand command = commands.named(job.command())
                .orElseThrow(() -> new IllegalStateException("no command " + job.command()));
        return new Walk(command, job, more, talk, screen).walk(run);
    }

    /** A question with the slot that its answer fills. */
    private record Question(Job.Step step, Slot slot) {
        String label() {
            return slot.isOption() ? slot.longName() : slot.word().toLowerCase(Locale.ROOT);
        }
    }

    /** What came of a question. */
    private enum Turn {
        ON,
        BACK,
        DROPPED
    }

    private final class Walk {
        private final MethodCommand command;
        private final Job job;
        private final List<String> more;
        private final Talk talk;
        private final Screen screen;
        private final List<Question> questions = new ArrayList<>();
        private final Map<String, String> answers = new LinkedHashMap<>();

        Walk(MethodCommand command, Job job, List<String> more, Talk talk, Screen screen) {
            this.command = command;
            this.job = job;
            this.more = more;
            this.talk = talk;
            this.screen = screen;
            for (Job.Step step : job.steps()) {
                questions.add(new Question(step, slot(step.place())));
            }
        }

        private Slot slot(String place) {
            return command.slots().stream()
                    .filter(slot -> slot.isOption() && slot.longName().equals(place)
                            || slot.isWord() && slot.word().equals(place))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException(command.getName() + " takes no " + place));
        }

        boolean walk(Predicate<List<String>> run) {
            screen.prose(
                    job.name() + ": Enter leaves out what need not be told, ? explains, < goes back, Ctrl-C drops it");
            if (!ask(questions)) {
                return dropped();
            }
            while (true) {
                show();
                screen.prose(
                        "Enter writes it; a number changes that answer, \"more\" asks for the rest, Ctrl-C drops it");
                screen.flush();
                Optional<String> choice = talk.ask("write it> ", begun -> List.of(Suggestion.of(MORE)));
                if (choice.isEmpty()
                        || choice.get().equalsIgnoreCase("no")
                        || choice.get().equalsIgnoreCase("n")) {
                    return dropped();
                }
                if (choice.get().isEmpty()
                        || choice.get().equalsIgnoreCase("yes")
                        || choice.get().equalsIgnoreCase("y")) {
                    if (run.test(words())) {
                        talk.learn(line());
                        return true;
                    }
                    screen.prose("nothing was written");
                } else if (choice.get().equals(MORE)) {
                    List<Question> rest = rest();
                    questions.addAll(rest);
                    if (!ask(rest)) {
                        return dropped();
                    }
                } else if (!change(choice.get())) {
                    return dropped();
                }
            }
        }

        private boolean dropped() {
            screen.prose("dropped; nothing was written");
            return false;
        }

        /** Ask questions one after another; return whether the user went to the end. */
        private boolean ask(List<Question> some) {
            int at = 0;
            List<Integer> asked = new ArrayList<>();
            while (at < some.size()) {
                Question question = some.get(at);
                if (question.step()
                        .after()
                        .filter(other -> !answers.containsKey(other))
                        .isPresent()) {
                    answers.remove(question.step().place());
                    at++;
                    continue;
                }
                switch (ask(question)) {
                    case ON -> {
                        asked.add(at);
                        at++;
                    }
                    case BACK -> at = asked.isEmpty() ? at : asked.remove(asked.size() - 1);
                    case DROPPED -> {
                        return false;
                    }
                }
            }
            return true;
        }

        private Turn ask(Question question) {
            Slot slot = question.slot();
            String place = question.step().place();
            Wanted wanted = wanted(slot, "");
            Optional<String> before = Optional.ofNullable(answers.get(place));
            Optional<String> usual = before.or(() -> usual(slot));
            Optional<String> hint = attendant.hint(wanted);
            screen.prose(question.step().question()
                    + usual.map(text -> " [" + text + "]").orElse("")
                    + (slot.required() && usual.isEmpty() ? " (needed)" : "")
                    + hint.map(text -> " (" + text + ")").orElse(""));
            while (true) {
                screen.flush();
                Optional<String> given = talk.ask("  " + question.label() + "> ", begun -> proposals(slot, begun));
                if (given.isEmpty()) {
                    return Turn.DROPPED;
                }
                String text = given.get();
                if (text.equals(BACK)) {
                    return Turn.BACK;
                }
                if (text.equals(EXPLAIN)) {
                    explain(slot);
                } else if (text.isEmpty() || text.equals(NOTHING)) {
                    if (text.equals(NOTHING)) {
                        answers.remove(place);
                    }
                    if (answers.containsKey(place) || usual.isPresent() && before.isEmpty() || !slot.required()) {
                        return Turn.ON;
                    }
                    screen.prose("  it must be told; ? explains");
                } else {
                    Optional<String> wrong = wrong(slot, text);
                    if (wrong.isEmpty()) {
                        answers.put(place, text);
                        return Turn.ON;
                    }
                    screen.prose("  " + wrong.get());
                }
            }
        }

        /** Return what is taken where nothing is answered. */
        private Optional<String> usual(Slot slot) {
            return attendant
                    .remembered(wanted(slot, ""))
                    .or(() -> Optional.of(slot.defaultValue()).filter(text -> !text.isEmpty()))
                    .or(() -> Optional.of("today").filter(today -> isTheDay(slot)));
        }

        /** Return whether a slot is the day on which the work was done, which is today unless told. */
        private static boolean isTheDay(Slot slot) {
            return slot.longName().equals("on") && slot.element().getType() == When.class && !slot.required();
        }

        /** Return why an answer cannot be taken, where that shows without the others. */
        private Optional<String> wrong(Slot slot, String text) {
            try {
                List<String> values = values(slot, text);
                if (slot.kind() == Slot.Kind.FLAG) {
                    return isYes(text) || text.equalsIgnoreCase("no") || text.equalsIgnoreCase("n")
                            ? Optional.empty()
                            : Optional.of("\"" + text + "\" is neither yes nor no");
                }
                command.check(slot, values);
                return attendant.doubt(wanted(slot, ""), values);
            } catch (UsageException told) {
                String where = slot.said() + " of " + command.getName() + ": ";
                String message = Failure.firstLine(told);
                return Optional.of(message.startsWith(where) ? message.substring(where.length()) : message);
            }
        }

        private void explain(Slot slot) {
            List<String> parts = new ArrayList<>();
            if (!slot.description().isEmpty()) {
                parts.add(slot.description());
            }
            if (!slot.allowed().isEmpty()) {
                parts.add("one of " + String.join(", ", slot.allowed()));
            } else if (slot.kind() == Slot.Kind.FLAG) {
                parts.add("yes or no");
            }
            if (slot.many() && slot.isOption()) {
                parts.add("several with commas");
            }
            parts.add(slot.required() ? "always needed" : "may be left out");
            screen.prose("  ", slot.said() + ": " + String.join("; ", parts));
            Help.examples(command).stream()
                    .filter(example -> !slot.isOption() || example.contains(slot.said() + " "))
                    .findFirst()
                    .ifPresent(example -> screen.prose("  ", "for example: " + example));
        }

        private List<Suggestion> proposals(Slot slot, String begun) {
            if (slot.kind() == Slot.Kind.FLAG) {
                return List.of(Suggestion.of("yes"), Suggestion.of("no"));
            }
            if (slot.isOption()) {
                return completion.values(command, slot, plain(), options(), begun);
            }
            int blank = begun.lastIndexOf(' ');
            String before = begun.substring(0, blank + 1);
            return completion.values(command, slot, plain(), options(), begun.substring(blank + 1)).stream()
                    .map(one -> one.after(before))
                    .toList();
        }

        private Wanted wanted(Slot slot, String begun) {
            return Completion.wanted(command, slot, plain(), options(), begun);
        }

        // ---- the answers as a line ----

        private static boolean isYes(String text) {
            return text.equalsIgnoreCase("yes") || text.equalsIgnoreCase("y");
        }

        private static List<String> values(Slot slot, String text) {
            return slot.isWord() ? Splitter.split(text) : List.of(text);
        }

        private List<String> plain() {
            List<String> words = new ArrayList<>();
            for (Slot slot : command.words()) {
                Optional.ofNullable(answers.get(slot.word())).ifPresent(text -> words.addAll(values(slot, text)));
            }
            return words;
        }

        private Map<String, String> options() {
            Map<String, String> options = new LinkedHashMap<>();
            for (int at = 0; at + 1 < more.size(); at += 2) {
                options.put(more.get(at).replaceFirst("^--", ""), more.get(at + 1));
            }
            for (Slot slot : command.options()) {
                Optional.ofNullable(answers.get(slot.longName()))
                        .filter(text -> slot.kind() != Slot.Kind.FLAG || isYes(text))
                        .ifPresent(text -> options.put(slot.longName(), text));
            }
            return options;
        }

        private List<String> words() {
            List<String> words = new ArrayList<>(List.of(command.getName().split(" ")));
            words.addAll(plain());
            for (Slot slot : command.options()) {
                String text = answers.get(slot.longName());
                if (text == null || slot.kind() == Slot.Kind.FLAG && !isYes(text)) {
                    continue;
                }
                if (slot.kind() == Slot.Kind.FLAG) {
                    words.add(slot.said());
                } else if (StrictParser.isOption(text)) {
                    words.add(slot.said() + "=" + text);
                } else {
                    words.add(slot.said());
                    words.add(text);
                }
            }
            words.addAll(more);
            return words;
        }

        private String line() {
            return String.join(" ", words().stream().map(Splitter::quoted).toList());
        }

        // ---- looking it over ----

        private void show() {
            screen.println();
            int number = 0;
            for (Question question : questions) {
                number++;
                Optional<String> answer =
                        Optional.ofNullable(answers.get(question.step().place()));
                Optional<String> remembered = attendant.remembered(wanted(question.slot(), ""));
                String text = answer.or(() -> remembered.map(set -> set + "  (set by \"use\")"))
                        .or(() -> usual(question.slot()))
                        .orElse("–");
                String label = String.format("%3d  %-10s ", number, question.label());
                screen.hanging(label, " ".repeat(label.length()), text);
            }
            screen.println();
            screen.prose("the same in one line:");
            screen.hanging("  ", "      ", line());
        }

        private boolean change(String choice) {
            Optional<Question> chosen = Optional.empty();
            for (int at = 0; at < questions.size(); at++) {
                if (choice.equals(Integer.toString(at + 1))
                        || choice.equals(questions.get(at).label())) {
                    chosen = Optional.of(questions.get(at));
                }
            }
            if (chosen.isEmpty()) {
                screen.prose("no answer \"" + choice + "\"; expected a number from 1 to " + questions.size());
                return true;
            }
            return ask(chosen.get()) != Turn.DROPPED;
        }

        private List<Question> rest() {
            return command.slots().stream()
                    .filter(slot -> slot.isOption()
                            && questions.stream()
                                    .noneMatch(question -> question.slot().equals(slot)))
                    .map(slot -> new Question(
                            new Job.Step(slot.longName(), slot.description() + "?", Optional.empty()), slot))
                    .toList();
        }
    }
}
