package tunside.http.ndjson;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import tunside.http.json.BodyReader;
import tunside.http.problem.Problem;
import tunside.http.problem.ProblemMapper;
import tunside.http.problem.Problems;
import tunside.http.watch.AnswerCounts;

/**
 * Answers the lines of one body in their order. It knows bytes and lines, nothing of connections; for one thread at a
 * time.
 */
public final class LineAnswers {
    /** Largest body, bytes. */
    public static final long LARGEST_BODY = 16L * 1024 * 1024;

    /** Problem of a larger one. */
    public static final Problem BODY_TOO_LARGE = Problems.tooLarge("The body is larger than 16 MiB");

    private static final Problem LINE_TOO_LONG = Problems.tooLarge("The line is longer than 256 KiB");
    private static final int ENOUGH_ANSWERED = 64 * 1024;

    private final Computation computation;
    private final BodyReader reader;
    private final ObjectMapper mapper;
    private final AnswerCounts counts;
    private final LineBuffer buffer = new LineBuffer();
    private long received;
    private int lines;
    private boolean bodyEnded;
    private boolean finished;

    LineAnswers(Computation computation, BodyReader reader, ObjectMapper mapper, AnswerCounts counts) {
        this.computation = computation;
        this.reader = reader;
        this.mapper = mapper;
        this.counts = counts;
    }

    /** A piece of the body. Take {@link #next} until it is empty before the next piece, or bytes pile up. */
    void add(byte[] piece) {
        received += piece.length;
        buffer.add(piece);
    }

    /** There is no more of the body. */
    void end() {
        bodyEnded = true;
    }

    /** Whether nothing more will be answered: the body has ended or was too long. */
    boolean isFinished() {
        return finished;
    }

    /** Answers to the next lines, each with its line feed, some 64 KiB at most; empty where a whole line is awaited. */
    byte[] next() {
        ByteArrayOutputStream answers = new ByteArrayOutputStream();
        while (!finished && answers.size() < ENOUGH_ANSWERED) {
            byte[] line = buffer.next();
            if (line == null && bodyEnded) {
                finished = true;
                line = buffer.rest();
            }
            if (received - (line == null ? 0 : buffer.length()) > LARGEST_BODY) {
                refuse(BODY_TOO_LARGE, answers);
            } else if ((line == null ? buffer.length() : line.length) > BodyReader.LARGEST_BODY) {
                refuse(LINE_TOO_LONG, answers);
            } else if (line == null) {
                break;
            } else {
                lines++;
                if (!isBlank(line)) {
                    append(answer(line), answers);
                }
            }
        }
        return answers.toByteArray();
    }

    private void refuse(Problem problem, ByteArrayOutputStream answers) {
        finished = true;
        append(problem.atLine(lines + 1), answers);
    }

    private Object answer(byte[] line) {
        try {
            return computation.answer(reader.read(line, computation.request()));
        } catch (RuntimeException e) {
            return ProblemMapper.problem(e).atLine(lines);
        }
    }

    private void append(Object answer, ByteArrayOutputStream answers) {
        counts.count(computation.path(), answer);
        try {
            answers.writeBytes(mapper.writeValueAsBytes(answer));
            answers.write('\n');
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isBlank(byte[] line) {
        for (byte character : line) {
            if (character != ' ' && character != '\t' && character != '\r') {
                return false;
            }
        }
        return true;
    }
}
