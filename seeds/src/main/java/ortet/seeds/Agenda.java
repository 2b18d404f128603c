package ortet.seeds;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.PriorityQueue;

/** What is still to be done, each on its day; done in the order of days, then of asking. */
final class Agenda {
    private record Job(LocalDate day, long turn, Runnable work) {}

    private final PriorityQueue<Job> jobs =
            new PriorityQueue<>(Comparator.comparing(Job::day).thenComparingLong(Job::turn));
    private final LocalDate last;
    private LocalDate today = LocalDate.MIN;
    private long turns;

    /** Make an agenda that ends with the given day; what is asked for later is never done. */
    Agenda(LocalDate last) {
        this.last = last;
    }

    /** Do something on a day, not before today. */
    void on(LocalDate day, Runnable work) {
        if (day.isBefore(today)) {
            throw new IllegalStateException("on " + today + " asked for something on " + day);
        }
        if (!day.isAfter(last)) {
            jobs.add(new Job(day, turns++, work));
        }
    }

    /** Return the day that it is. */
    LocalDate today() {
        return today;
    }

    /** Do everything. */
    void run() {
        for (Job job = jobs.poll(); job != null; job = jobs.poll()) {
            today = job.day();
            job.work().run();
        }
    }
}
