package tunside.http.config;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import tunside.reference.Table;

class TablesAtStartTest {
    @Test
    void everyClassThatReadsATableIsLoadedAtTheStart() {
        Set<String> readers = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("tunside").stream()
                        .flatMap(javaClass -> javaClass.getMethodCallsFromSelf().stream())
                        .filter(call -> call.getTargetOwner().isEquivalentTo(Table.class)
                                && call.getTarget().getName().startsWith("read")
                                && !call.getOriginOwner().isEquivalentTo(Table.class))
                        .map(JavaMethodCall::getOriginOwner)
                        .map(owner -> owner.getName())
                        .collect(Collectors.toSet());
        assertThat(TablesAtStart.READERS).containsExactlyInAnyOrderElementsOf(readers);
    }
}
