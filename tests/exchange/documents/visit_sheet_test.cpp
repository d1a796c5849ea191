#include "exchange/documents/visit_sheet.hpp"

#include <filesystem>

#include "exchange/documents/read_pdf.hpp"

namespace visit_sheet_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const std::string path =
    (std::filesystem::temp_directory_path() / "sparewell-visit-sheet-test.pdf").string();

VisitPapers made_papers(int visits, int lines) {
  VisitPapers papers;
  papers.clinic_name = "Harbour Limb Clinic";
  papers.title = "Visits on Thu 26 Nov 2026";
  papers.columns = {"Patient", "Findings"};
  papers.shares = {0.5, 0.5};
  for (int i = 0; i < visits; ++i) {
    const auto patient = fmt::format("P-{:04}", i);
    papers.rows.push_back({patient, "none"});
    VisitPage page{patient, "Visit on Thu 26 Nov 2026", {}, patient};
    page.sections = {{"Findings", {{"Act: nickel conflict", true, true}}, 1},
                     {"Have ready", {}, 3}};
    for (int line = 0; line < lines; ++line) {
      page.sections[0].lines.push_back({fmt::format("finding-{:03}", line)});
      page.sections[1].lines.push_back({fmt::format("piece-{:03}", line)});
    }
    papers.pages.push_back(std::move(page));
  }
  papers.left_out = "And {} more, see the program.";
  papers.notes = "Notes";
  papers.cautions = {"It does not replace judgement."};
  return papers;
}

}  // namespace

TEST_CASE("After the list of visits each patient has one page") {
  const auto pages = write_visit_papers(made_papers(3, 4), path);
  REQUIRE(pages);
  CHECK(*pages == 4);
  CHECK(pages_of(path) == 4);
  CHECK(has(words_in(path, 1, 1), "P-0002"));
  for (int i = 0; i < 3; ++i) {
    const auto text = words_in(path, i + 2, i + 2);
    CHECK(has(text, fmt::format("P-{:04}", i)));
    CHECK(has(text, "finding-003"));
    CHECK(has(text, "piece-003"));
    CHECK(has(text, "Notes"));
    CHECK(has(text, "does not replace judgement"));
    CHECK(has(text, fmt::format("Page {} of 4", i + 2)));
  }
}

TEST_CASE("A patient with more than a page holds keeps one page, with the rest counted") {
  const auto pages = write_visit_papers(made_papers(1, 80), path);
  REQUIRE(pages);
  CHECK(*pages == 2);
  const auto text = words_in(path, 2, 2);
  CHECK(has(text, "Act: nickel conflict"));
  CHECK(has(text, "And 80 more, see the program."));  // none of the pieces had room
  CHECK(has(text, "finding-000"));
  CHECK_FALSE(has(text, "finding-079"));
  std::filesystem::remove(path);
}

}  // namespace visit_sheet_test
