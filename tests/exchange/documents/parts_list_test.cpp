#include "exchange/documents/parts_list.hpp"

#include <filesystem>

#include "exchange/documents/read_pdf.hpp"

namespace parts_list_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

const std::string path =
    (std::filesystem::temp_directory_path() / "sparewell-parts-list-test.pdf").string();

PartsList made_list(int parts) {
  PartsList list;
  list.clinic_name = "Harbour Limb Clinic";
  list.title = "My parts and their care";
  list.patient = "Patient: P-0012";
  list.written_on = "Written on 25 Nov 2026";
  list.explained = {"How the days are meant."};
  list.sides = {{"Left side", {}}};
  for (int i = 0; i < parts; ++i) {
    list.sides[0].parts.push_back({{Pictogram::liner, fmt::format("Part {:03}", i), true},
                                   {"lot A12. In use since 3 Mar 2026.",
                                    "Ask for a new one between 1 Dec 2026 and 2 Mar 2027."}});
  }
  list.sensitivities = {{Pictogram::warning, "I react to"}, {{Pictogram::reacts, "nickel", true}}};
  list.care = {{{Pictogram::none, "Care: liner"}, {{Pictogram::wash, "Wash it every evening."}}}};
  list.cautions = {{Pictogram::none, "Skin and safety"},
                   {{Pictogram::none, "It does not replace judgement."}}};
  list.page_numbers = "Página {} de {}";
  return list;
}

}  // namespace

TEST_CASE("A parts list names every part on as many pages as it takes") {
  const auto pages = write_parts_lists({made_list(60)}, PaperSize::a4, path);
  REQUIRE(pages);
  CHECK(*pages > 2);
  CHECK(pages_of(path) == *pages);
  const auto text = words_in(path);
  for (const std::string part : {"Part 000", "Part 059", "nickel", "Wash it every evening.",
                           "does not replace judgement", "Página 1 de"}) {
    CAPTURE(part);
    CHECK(has(text, part));
  }
  CHECK(has(text, fmt::format("Página {0} de {0}", *pages)));
}

TEST_CASE("Lists in two languages begin and count their pages each for itself") {
  const auto pages = write_parts_lists({made_list(2), made_list(60)}, PaperSize::letter, path);
  REQUIRE(pages);
  CHECK(has(words_in(path, 1, 1), "Página 1 de 1"));
  CHECK(has(words_in(path, 2, 2), fmt::format("Página 1 de {}", *pages - 1)));
  std::filesystem::remove(path);
}

}  // namespace parts_list_test
