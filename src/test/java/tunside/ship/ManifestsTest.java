package tunside.ship;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.fabric8.kubernetes.api.model.Container;
import io.fabric8.kubernetes.api.model.ContainerPort;
import io.fabric8.kubernetes.api.model.HTTPGetAction;
import io.fabric8.kubernetes.api.model.HasMetadata;
import io.fabric8.kubernetes.api.model.PodSpec;
import io.fabric8.kubernetes.api.model.Probe;
import io.fabric8.kubernetes.api.model.Quantity;
import io.fabric8.kubernetes.api.model.Service;
import io.fabric8.kubernetes.api.model.ServiceAccount;
import io.fabric8.kubernetes.api.model.Volume;
import io.fabric8.kubernetes.api.model.apps.Deployment;
import io.fabric8.kubernetes.api.model.autoscaling.v2.HorizontalPodAutoscaler;
import io.fabric8.kubernetes.api.model.networking.v1.NetworkPolicy;
import io.fabric8.kubernetes.api.model.policy.v1.PodDisruptionBudget;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The manifests under {@code k8s/}, and what {@code .ci/manifests} rendered of them, against the Kubernetes model. */
class ManifestsTest {
    private static final Path SOURCE = Path.of("k8s");
    private static final Path RENDERED = Path.of("target/k8s");

    private static List<Path> files(Path root) throws IOException {
        if (!Files.exists(root)) {
            return List.of();
        }
        try (Stream<Path> paths = Files.walk(root)) {
            return paths.filter(path -> path.toString().endsWith(".yaml"))
                    .filter(path -> !path.endsWith("kustomization.yaml"))
                    .sorted()
                    .toList();
        }
    }

    private static <T> T base(String file, Class<T> type) throws IOException {
        return type.cast(
                Manifests.read(Files.readString(SOURCE.resolve("base/" + file))).get(0));
    }

    @TestFactory
    Stream<DynamicTest> everyManifestIsWhatTheModelKnows() throws IOException {
        List<Path> all = new ArrayList<>(files(SOURCE));
        all.addAll(files(RENDERED));
        assertThat(all).hasSizeGreaterThan(10);
        return all.stream()
                .map(path -> DynamicTest.dynamicTest(
                        path.toString(),
                        () -> assertThat(Manifests.read(Files.readString(path))).isNotEmpty()));
    }

    @TestFactory
    Stream<DynamicTest> aWrongFieldIsRefusedWhereverItStands() throws IOException {
        String deployment = Files.readString(SOURCE.resolve("base/deployment.yaml"));
        return Stream.of(
                        new String[] {"spec:\n  # no", "spec:\n  replica: 3\n  # no", "replica"},
                        new String[] {"readOnlyRootFilesystem", "readOnlyRootFileSystem", "readOnlyRootFileSystem"},
                        new String[] {"periodSeconds: 10", "period: 10", "period"},
                        new String[] {"emptyDir:", "emptyDirectory:", "emptyDirectory"},
                        new String[] {"containerPort: 9000", "containerPort: nine", "nine"},
                        new String[] {"memory: 320Mi", "memory: much", "much"},
                        new String[] {"kind: Deployment", "kind: Deploymint", "Deploymint"},
                        new String[] {"apiVersion: apps/v1", "apiVersion: apps/v7", "apps/v7"})
                .map(change -> DynamicTest.dynamicTest(change[2], () -> {
                    assertThat(deployment).contains(change[0]);
                    assertThatThrownBy(() -> Manifests.read(deployment.replaceFirst(change[0], change[1])))
                            .hasStackTraceContaining(change[2]);
                }));
    }

    @Test
    void thePodMeetsTheRestrictedStandard() throws IOException {
        for (PodSpec pod : pods()) {
            assertThat(pod.getSecurityContext().getRunAsNonRoot()).isTrue();
            assertThat(pod.getSecurityContext().getRunAsUser()).isEqualTo(65532);
            assertThat(pod.getSecurityContext().getSeccompProfile().getType()).isEqualTo("RuntimeDefault");
            assertThat(pod.getAutomountServiceAccountToken()).isFalse();
            assertThat(pod.getHostNetwork()).isNull();
            for (Container container : pod.getContainers()) {
                assertThat(container.getSecurityContext().getAllowPrivilegeEscalation())
                        .isFalse();
                assertThat(container.getSecurityContext().getReadOnlyRootFilesystem())
                        .isTrue();
                assertThat(container.getSecurityContext().getCapabilities().getDrop())
                        .containsExactly("ALL");
                assertThat(container.getSecurityContext().getCapabilities().getAdd())
                        .isEmpty();
                assertThat(container.getResources().getLimits()).containsKey("memory");
                assertThat(container.getResources().getRequests()).containsKeys("cpu", "memory");
            }
            assertThat(pod.getVolumes()).extracting(Volume::getHostPath).containsOnlyNulls();
        }
        assertThat(base("service-account.yaml", ServiceAccount.class).getAutomountServiceAccountToken())
                .isFalse();
    }

    /** The pod of the base and of each rendered overlay. */
    private static List<PodSpec> pods() throws IOException {
        List<PodSpec> pods = new ArrayList<>();
        pods.add(base("deployment.yaml", Deployment.class)
                .getSpec()
                .getTemplate()
                .getSpec());
        for (Path rendered : files(RENDERED)) {
            for (HasMetadata object : Manifests.read(Files.readString(rendered))) {
                if (object instanceof Deployment deployment) {
                    pods.add(deployment.getSpec().getTemplate().getSpec());
                }
            }
        }
        return pods;
    }

    @Test
    void portsAndProbesAreTheOnesTheServiceListensTo() throws IOException {
        Properties configured = new Properties();
        configured.load(Files.newBufferedReader(Path.of("src/main/resources/application.properties")));
        Container container = pods().get(0).getContainers().get(0);
        assertThat(container.getPorts())
                .extracting(
                        ContainerPort::getName, port -> port.getContainerPort().toString())
                .containsExactlyInAnyOrder(
                        org.assertj.core.groups.Tuple.tuple("http", configured.getProperty("quarkus.http.port")),
                        org.assertj.core.groups.Tuple.tuple(
                                "management", configured.getProperty("quarkus.management.port")));
        assertThat(Stream.of(container.getStartupProbe(), container.getLivenessProbe(), container.getReadinessProbe())
                        .map(Probe::getHttpGet)
                        .map(HTTPGetAction::getPath))
                .containsExactly("/q/health/started", "/q/health/live", "/q/health/ready");
        assertThat(Stream.of(container.getStartupProbe(), container.getLivenessProbe(), container.getReadinessProbe())
                        .map(probe -> probe.getHttpGet().getPort().getStrVal()))
                .containsOnly("management");
        assertThat(base("service.yaml", Service.class).getSpec().getPorts())
                .singleElement()
                .satisfies(port -> assertThat(port.getTargetPort().getStrVal()).isEqualTo("http"));
    }

    @Test
    void everySelectorFindsThePod() throws IOException {
        Deployment deployment = base("deployment.yaml", Deployment.class);
        var labels = deployment.getSpec().getTemplate().getMetadata().getLabels();
        assertThat(deployment.getSpec().getSelector().getMatchLabels()).isEqualTo(labels);
        assertThat(base("service.yaml", Service.class).getSpec().getSelector()).isEqualTo(labels);
        assertThat(base("pod-disruption-budget.yaml", PodDisruptionBudget.class)
                        .getSpec()
                        .getSelector()
                        .getMatchLabels())
                .isEqualTo(labels);
        assertThat(base("network-policy.yaml", NetworkPolicy.class)
                        .getSpec()
                        .getPodSelector()
                        .getMatchLabels())
                .isEqualTo(labels);
        var scaled = base("horizontal-pod-autoscaler.yaml", HorizontalPodAutoscaler.class)
                .getSpec()
                .getScaleTargetRef();
        assertThat(scaled.getName()).isEqualTo(deployment.getMetadata().getName());
        assertThat(scaled.getKind()).isEqualTo(deployment.getKind());
        assertThat(deployment.getSpec().getReplicas())
                .as("the autoscaler owns the number of pods")
                .isNull();
    }

    @Test
    void nothingMayLeaveThePod() throws IOException {
        var policy = base("network-policy.yaml", NetworkPolicy.class).getSpec();
        assertThat(policy.getPolicyTypes()).contains("Egress");
        assertThat(policy.getEgress()).isEmpty();
    }

    @Test
    void thePodHasTimeToFinishWhatItAccepted() throws IOException {
        PodSpec pod = pods().get(0);
        int seconds = pod.getContainers().get(0).getEnv().stream()
                .filter(variable -> variable.getName().startsWith("QUARKUS_SHUTDOWN_"))
                .mapToInt(variable -> Integer.parseInt(variable.getValue().replace("S", "")))
                .sum();
        assertThat(seconds).isPositive();
        assertThat(pod.getTerminationGracePeriodSeconds()).isGreaterThan(seconds + 5);
    }

    @Test
    void thePodHasRoomForTheHeapAndHalfAsMuchAgain() throws IOException {
        String dockerfile = Files.readString(Path.of("src/main/docker/Dockerfile"));
        int heapMiB = Integer.parseInt(dockerfile.replaceAll("(?s).*-Xmx(\\d+)m.*", "$1"));
        Quantity limit =
                pods().get(0).getContainers().get(0).getResources().getLimits().get("memory");
        assertThat(Quantity.getAmountInBytes(limit).longValue()).isGreaterThanOrEqualTo(heapMiB * (1L << 20) * 3 / 2);
    }
}
