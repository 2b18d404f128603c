package ortet.neo4j;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import ortet.book.BookView;
import ortet.book.Books;
import ortet.book.Chained;
import ortet.book.Checkup;
import ortet.book.Diary;
import ortet.book.Progress;
import ortet.book.Proposal;
import ortet.book.QuickDisk;
import ortet.book.Receipt;
import ortet.entry.EntryId;
import ortet.value.Refused;
import ortet.value.Unavailable;

/** Many write at once: nothing is lost, nothing is there twice, and of two that cannot both be true one stands. */
class ManyWritersTests {
    private static final int WRITERS = 8;
    private static final int EACH = 12;

    @TempDir(factory = QuickDisk.class)
    Path folder;

    @Test
    void losesNothingAndDoublesNothingWhenTheServerIsKilledAndStartedAgain() throws Exception {
        try (ServerProcess server = new ServerProcess(folder)) {
            server.start();
            try (Neo4jBookStore store = Neo4jBookStore.create(
                    server.address(), TestServer.CREDENTIALS, UUID.randomUUID(), TestServer.ZONE, TestServer.CLOCK)) {
                new Diary(store).write("2015-03-01 acquired K-1");
            }
            ConcurrentLinkedQueue<EntryId> acknowledged = new ConcurrentLinkedQueue<>();
            AtomicInteger done = new AtomicInteger();
            ExecutorService threads = Executors.newFixedThreadPool(WRITERS);
            try {
                List<Future<?>> writers = new ArrayList<>();
                for (int writer = 0; writer < WRITERS; writer++) {
                    String name = "W" + writer;
                    writers.add(threads.submit(() -> write(server.address(), name, acknowledged, done)));
                }
                while (done.get() < WRITERS * EACH / 3) {
                    TimeUnit.MILLISECONDS.sleep(5);
                }
                server.kill();
                server.start();
                for (Future<?> writer : writers) {
                    writer.get(3, TimeUnit.MINUTES);
                }
            } finally {
                threads.shutdownNow();
            }
            try (Neo4jBookStore store = Neo4jBookStore.open(server.address(), TestServer.CREDENTIALS)) {
                List<EntryId> written = store.read(view -> {
                    try (Stream<Chained> entries = view.since(1)) {
                        return entries.map(entry -> entry.recorded().proposed().id())
                                .toList();
                    }
                });
                assertEquals(WRITERS * EACH * 2, written.size());
                assertEquals(WRITERS * EACH * 2, acknowledged.size());
                assertEquals(new HashSet<>(acknowledged), new HashSet<>(written));
                Books.assertChained(store);
                Checkup checkup = store.read(view -> Checkup.of(view, new Diary(store).judge(), Progress.NONE));
                assertEquals(List.of(), checkup.wrong());
            }
        }
    }

    /** Write as somebody does who says each line again until it is taken. */
    private static Void write(
            Address address, String name, ConcurrentLinkedQueue<EntryId> acknowledged, AtomicInteger done)
            throws InterruptedException {
        Optional<Neo4jBookStore> open = Optional.empty();
        try {
            for (int at = 0; at < EACH; at++) {
                Proposal proposal = null;
                while (true) {
                    try {
                        if (open.isEmpty()) {
                            open = Optional.of(Neo4jBookStore.open(address, TestServer.CREDENTIALS));
                        }
                        Diary diary = new Diary(open.get());
                        if (proposal == null) {
                            proposal = diary.proposal(
                                    "2020-05-01 layer-set " + name + "-" + at + "; mother=K-1",
                                    "2020-05-02 checked " + name + "-" + at + "; findings=callus");
                        }
                        Receipt receipt = open.get().append(proposal, diary.judge());
                        assertEquals(2, receipt.written().size() + receipt.alreadyThere());
                        break;
                    } catch (Unavailable away) {
                        TimeUnit.MILLISECONDS.sleep(100);
                    }
                }
                for (Proposal.Item item : proposal.items()) {
                    acknowledged.add(item.proposed().id());
                }
                done.incrementAndGet();
            }
        } finally {
            open.ifPresent(Neo4jBookStore::close);
        }
        return null;
    }

    @Test
    void leavesOneStandingOfTwoThatCannotBothBeTrue() throws Exception {
        try (Neo4jBookStore one = TestServer.create();
                Neo4jBookStore other = TestServer.open()) {
            new Diary(one).write("2015-03-01 acquired K-1");
            ExecutorService threads = Executors.newFixedThreadPool(2);
            try {
                for (int round = 0; round < 8; round++) {
                    String tag = "J-" + round;
                    CyclicBarrier together = new CyclicBarrier(2);
                    List<Future<Optional<String>>> both = new ArrayList<>();
                    for (Neo4jBookStore store : List.of(one, other)) {
                        both.add(threads.submit(() -> {
                            together.await();
                            try {
                                new Diary(store).write("2016-05-01 layer-set " + tag + "; mother=K-1");
                                return Optional.empty();
                            } catch (Refused refused) {
                                return Optional.of(refused.lines().get(0));
                            }
                        }));
                    }
                    Set<Optional<String>> answers = new HashSet<>();
                    for (Future<Optional<String>> answer : both) {
                        answers.add(answer.get(1, TimeUnit.MINUTES));
                    }
                    assertEquals(2, answers.size(), answers.toString());
                    assertTrue(answers.contains(Optional.<String>empty()));
                    assertTrue(
                            answers.stream().flatMap(Optional::stream).allMatch(line -> line.contains(tag)),
                            answers.toString());
                }
            } finally {
                threads.shutdownNow();
            }
            assertEquals(9L, one.<Long>read(view -> view.head().order()).longValue());
            Books.assertChained(other);
        }
    }

    @Test
    void handsOutTheSameReceiptWhenTheFirstWasLostOnTheWay() throws Exception {
        Neo4jBookStore direct = TestServer.create();
        try (direct;
                Wire wire = new Wire(TestServer.address());
                Neo4jBookStore store = Neo4jBookStore.open(wire.address(), TestServer.CREDENTIALS)) {
            Diary diary = new Diary(store);
            diary.write("2015-03-01 acquired K-1");
            Proposal proposal = diary.proposal("2016-05-01 layer-set J-1; mother=K-1");
            wire.cutAfterTheNextCommit();
            Receipt receipt = store.append(proposal, diary.judge());
            assertEquals(1, wire.cuts());
            assertEquals(1, receipt.written().size());
            assertEquals(0, receipt.alreadyThere());
            assertEquals(2L, direct.read(BookView::head).order());
            assertEquals(3L, diary.write("2016-05-02 seen J-1").head().order());
        }
    }
}
