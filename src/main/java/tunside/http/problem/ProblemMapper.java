package tunside.http.problem;

import static java.util.Objects.requireNonNull;

import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.RestResponse;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;

/** Turns every exception that reaches the framework into a problem. */
public final class ProblemMapper {
    private static final Logger LOG = Logger.getLogger(ProblemMapper.class);

    /** The problem that tells the caller of an exception; what is no fault of the request is logged. */
    public static Problem problem(Throwable e) {
        if (e instanceof InvalidRequestException invalid) {
            return Problems.invalid(invalid.faults());
        }
        if (e instanceof UnanswerableException unanswerable) {
            return Problems.unanswerable(unanswerable.pointer(), requireNonNull(unanswerable.getMessage()));
        }
        LOG.error("unexpected exception", e);
        return Problems.status(500);
    }

    @ServerExceptionMapper(priority = 1)
    public RestResponse<Problem> invalid(InvalidRequestException e) {
        return answer(problem(e));
    }

    @ServerExceptionMapper(priority = 1)
    public RestResponse<Problem> unanswerable(UnanswerableException e) {
        return answer(problem(e));
    }

    @ServerExceptionMapper(priority = 1)
    public RestResponse<Problem> notFound(NotFoundException e) {
        return answer(Problems.status(404));
    }

    @ServerExceptionMapper(priority = 1)
    public RestResponse<Problem> refused(WebApplicationException e) {
        Response original = e.getResponse();
        RestResponse<Problem> answer = answer(Problems.status(original.getStatus()));
        String allow = original.getHeaderString(HttpHeaders.ALLOW);
        if (allow != null) {
            answer.getHeaders().putSingle(HttpHeaders.ALLOW, allow);
        }
        return answer;
    }

    @ServerExceptionMapper(priority = 1)
    public RestResponse<Problem> broken(Throwable e) {
        return answer(problem(e));
    }

    private static RestResponse<Problem> answer(Problem problem) {
        return RestResponse.ResponseBuilder.<Problem>create(problem.status())
                .entity(problem)
                .type(Problems.MEDIA_TYPE)
                .build();
    }
}
