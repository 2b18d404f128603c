package ortet.commands;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import ortet.line.Job;

/** The work that can be recorded question by question, in the order of the bench. */
final class Jobs {
    /** All of it. */
    static final List<Job> ALL = List.of(
            job("layers set", "layer set")
                    .ask("mother", "On which mother?")
                    .ask("TAG", "Which tags were tied on? J-201..J-205 stands for five")
                    .ask("stem", "How thick are the stems, in mm? 12 for all, 12,15x3 for one of 12 and three of 15")
                    .ask("ring", "How long a ring of bark was taken off, in mm?")
                    .ask("wound", "How was the bark cut?")
                    .ask("hormone", "Which rooting hormone, if any?")
                    .after("hormone", "strength", "How strong is it, 0.3% or 3000ppm?")
                    .ask("medium", "Packed in what?")
                    .ask("wrap", "Wrapped in what?")
                    .hand(),
            job("layers looked at", "layer check")
                    .ask("TAG", "Which layers?")
                    .ask("found", "What was seen?")
                    .hand(),
            job("layers severed", "layer sever")
                    .ask("TAG", "Which layers were cut from their mother?")
                    .ask("roots", "What roots were there? none says that they failed")
                    .ask("container", "Into which container?")
                    .ask("place", "Where do they stand now?")
                    .hand(),
            job("layers failed", "layer fail")
                    .ask("TAG", "Which layers came to nothing?")
                    .ask("cause", "Why?")
                    .hand(),
            job("cuttings struck", "cuttings strike")
                    .ask("mother", "From which mother? K-12:40,K-13:20 for several")
                    .ask("TAG", "Under which tag, one for each tray?")
                    .ask("count", "How many in each tray?")
                    .ask("wood", "What kind of cutting?")
                    .ask("hormone", "Which rooting hormone, if any?")
                    .after("hormone", "strength", "How strong is it, 0.3% or 3000ppm?")
                    .ask("medium", "In what do they root?")
                    .ask("place", "Where does the tray stand?")
                    .hand(),
            job("cuttings looked at", "cuttings check")
                    .ask("TAG", "Which trays?")
                    .ask("found", "What was seen? callus:20,roots-showing:30")
                    .hand(),
            job("plants drawn from a tray", "cuttings draw")
                    .ask("from", "From which tray?")
                    .ask("TAG", "Which tags do they get, one for each plant?")
                    .ask("container", "Into which container?")
                    .ask("place", "Where do they stand now?")
                    .ask("rest", "What becomes of the rest of the tray?")
                    .hand(),
            job("cuttings failed", "cuttings fail")
                    .ask("TAG", "Which trays?")
                    .ask("count", "How many? Enter for all that are pending")
                    .ask("cause", "Why?")
                    .hand(),
            job("grafts worked", "graft")
                    .ask("scion", "Which plant gave the scions?")
                    .ask("stock", "On which rootstock, a plant or a batch?")
                    .ask("TAG", "Which tags were tied on, one for each graft?")
                    .ask("kind", "What kind of graft?")
                    .ask("place", "Where do they stand?")
                    .hand(),
            job("seed sown", "sow")
                    .ask("mother", "Which plant bore the seed, if it is one of yours?")
                    .ask("cultivar", "Under which name?")
                    .ask("TAG", "Under which tag?")
                    .ask("count", "How many seeds? Enter where they were weighed")
                    .ask("grams", "How many grams, where they were not counted?")
                    .ask("place", "Where does the pan stand?")
                    .hand(),
            job("plants acquired", "acquire")
                    .ask("TAG", "Which tags were tied on, one for each plant or batch?")
                    .ask("cultivar", "Under which name did they come?")
                    .ask("count", "How many under each tag? Enter where each tag is one plant")
                    .ask("supplier", "From whom?")
                    .after("supplier", "consignment", "With which delivery note?")
                    .ask("born", "When did they start life, if known?")
                    .ask("container", "In which container?")
                    .ask("place", "Where do they stand?")
                    .hand(),
            job("plants potted", "pot")
                    .ask("TAG", "Which plants, or whole batches?")
                    .ask("into", "Into which container?")
                    .ask("purpose", "To what purpose?")
                    .ask("medium", "In what do they grow?")
                    .ask("place", "Where do they stand now?")
                    .hand(),
            job("plants moved", "move")
                    .ask("TAG", "Which plants or batches?")
                    .ask("to", "Where to?")
                    .hand(),
            job("plants measured", "measure")
                    .ask("TAG", "Which plants?")
                    .ask("stem", "How thick is the stem, in mm?")
                    .ask("height", "How high, in mm?")
                    .ask("positions", "How many places for layers, by diameter? 8-12:5,12-20:3")
                    .hand(),
            job("plants kept as stock", "keep").ask("TAG", "Which plants?").hand(),
            job("plants reserved", "reserve")
                    .ask("TAG", "Which plants or batches?")
                    .ask("to", "For which customer?")
                    .ask("count", "How many of each batch?")
                    .ask("until", "Until when?")
                    .hand(),
            job("plants sold", "sell")
                    .ask("TAG", "Which plants or batches?")
                    .ask("to", "To which customer?")
                    .ask("count", "How many of each batch? Enter for all")
                    .ask("price", "At what price each, with the currency? 45.00 EUR")
                    .ask("invoice", "On which invoice or delivery note?")
                    .ask("passport", "With which plant passport, if one was issued?")
                    .ask("layers", "What becomes of layers that are still on them, if there are any?")
                    .hand(),
            job("plants lost", "lose")
                    .ask("TAG", "Which plants or batches?")
                    .ask("count", "How many of each batch? Enter for all")
                    .ask("cause", "Why?")
                    .ask("layers", "What becomes of layers that are still on them, if there are any?")
                    .hand(),
            job("plants culled", "cull")
                    .ask("TAG", "Which plants or batches?")
                    .ask("why", "Why?")
                    .ask("count", "How many of each batch? Enter for all")
                    .hand(),
            job("a remark", "remark")
                    .ask("TAG", "About which plants or batches?")
                    .ask("text", "What is to be remarked?")
                    .ask("on", "On which day? yesterday, 2026-05-03 or 2026-05")
                    .ask("by", "Who says so?")
                    .job());

    private Jobs() {}

    private static Builder job(String name, String command) {
        return new Builder(name, command);
    }

    /** Gathers the questions of a job. */
    private static final class Builder {
        private final String name;
        private final String command;
        private final List<Job.Step> steps = new ArrayList<>();

        private Builder(String name, String command) {
            this.name = name;
            this.command = command;
        }

        Builder ask(String place, String question) {
            steps.add(new Job.Step(place, question, Optional.empty()));
            return this;
        }

        Builder after(String other, String place, String question) {
            steps.add(new Job.Step(place, question, Optional.of(other)));
            return this;
        }

        /** End with what every recording says besides. */
        Job hand() {
            return ask("on", "On which day? yesterday, 2026-05-03 or 2026-05")
                    .ask("by", "Who did it?")
                    .ask("note", "Anything else?")
                    .job();
        }

        Job job() {
            return new Job(name, command, steps);
        }
    }
}
