#include "exchange/documents/delivery_sheet.hpp"

#include <filesystem>

#include "exchange/documents/read_pdf.hpp"

namespace delivery_sheet_test {

using namespace sparewell;
using namespace sparewell::exchange;

namespace {

DeliverySheet made_sheet(int lines) {
  DeliverySheet sheet;
  sheet.clinic_name = "Harbour Limb Clinic";
  sheet.clinic_address = "1 Quay\nPort Sample";
  sheet.patient_ref = "P-0012";
  sheet.patient_name = "Ольга Řeháková";
  sheet.written_on = "25 Nov 2026";
  for (int i = 0; i < lines; ++i) {
    sheet.lines.push_back({fmt::format("Locking liner {}", i), "left", "28",
                           fmt::format("LOT{}", i), "SN77", 2, "25 Nov 2026"});
  }
  sheet.cautions = {"Look at the skin every day."};
  sheet.judgement = "It supports and does not replace judgement.";
  return sheet;
}

const std::string path =
    (std::filesystem::temp_directory_path() / "sparewell-delivery-sheet-test.pdf").string();

}  // namespace

TEST_CASE("A reader of PDF files finds every fact on one page, whatever the script of the name") {
  const auto pages = write_delivery_sheet(made_sheet(2), path);
  REQUIRE(pages);
  CHECK(*pages == 1);
  const auto text = read_by(fmt::format("pdftotext -layout {} -", path));
  for (const auto* part :
       {"Harbour Limb Clinic", "Port Sample", "P-0012", "Ольга Řeháková", "Locking liner 1", "LOT1",
        "SN77", "28", "25 Nov 2026", "Look at the skin every day", "does not replace judgement",
        "Patient or representative", "Staff", "Page 1 of 1"}) {
    CAPTURE(part);
    CHECK(has(text, part));
  }
  const auto facts = read_by("pdfinfo " + path);
  CHECK(has(facts, "(A4)"));
  std::filesystem::remove(path);
}

TEST_CASE("Many lines go over several pages, long texts wrap, the name can be left out") {
  auto sheet = made_sheet(120);
  sheet.paper = PaperSize::letter;
  sheet.patient_name.clear();
  sheet.lines[0].description = fmt::format("{} tail", std::string(400, 'w'));
  const auto pages = write_delivery_sheet(sheet, path);
  REQUIRE(pages);
  CHECK(*pages > 2);
  const auto facts = read_by("pdfinfo " + path);
  CHECK(has(facts, fmt::format("Pages:           {}", *pages)));
  CHECK(has(facts, "612 x 792"));
  const auto text = read_by(fmt::format("pdftotext -layout {} -", path));
  CHECK(has(text, "tail"));
  CHECK(has(text, "LOT119"));
  CHECK(has(text, fmt::format("Page {} of {}", *pages, *pages)));
  CHECK_FALSE(has(text, "Ольга"));
  std::filesystem::remove(path);
}

TEST_CASE("A sheet that cannot be written leaves no file") {
  CHECK_FALSE(write_delivery_sheet(made_sheet(1), "/nosuch/folder/sheet.pdf"));
}

}  // namespace delivery_sheet_test
