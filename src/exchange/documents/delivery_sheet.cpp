#include "exchange/documents/delivery_sheet.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/documents/pdf_file.hpp"
#include "exchange/documents/pdf_pages.hpp"

namespace sparewell::exchange {
namespace {

const std::vector<double> shares{0.34, 0.07, 0.08, 0.15, 0.14, 0.09, 0.13};

void write_head(PdfPages& pages, const DeliverySheet& sheet) {
  pages.paragraph(sheet.clinic_name, 13, true, 0);
  if (!sheet.clinic_address.empty()) pages.paragraph(sheet.clinic_address, 9, false, 2);
  pages.paragraph(said("Proof of delivery"), 18, true, 18);
  const auto name =
      sheet.patient_name.empty() ? std::string{} : fmt::format("   {}", sheet.patient_name);
  pages.paragraph(say("Patient {}", sheet.patient_ref) + name, 11, true, 8);
  pages.paragraph(say("Written on {}", sheet.written_on), 9, false, 2);
  if (!sheet.remark.empty()) pages.paragraph(sheet.remark, 10, true, 6);
}

void write_lines(PdfPages& pages, const DeliverySheet& sheet) {
  pages.paragraph(said("These parts were handed over:"), 10, false, 12);
  pages.row({said("Part"), said("Side"), said("Size"), said("Lot"), said("Serial"), said("Pieces"),
             said("Date")},
            shares, 8.5, true);
  for (const auto& line : sheet.lines) {
    pages.row({line.description, line.side, line.size, line.lot.empty() ? said("none") : line.lot,
               line.serial.empty() ? said("none") : line.serial, std::to_string(line.quantity),
               line.date},
              shares, 8.5, false);
  }
}

int write_pages(PdfPages& pages, const DeliverySheet& sheet) {
  write_head(pages, sheet);
  write_lines(pages, sheet);
  pages.paragraph(said("Use and care"), 11, true, 14);
  for (const auto& caution : sheet.cautions) pages.paragraph(fmt::format("•  {}", caution), 9.5);
  pages.paragraph(sheet.judgement, 9.5, true, 10);
  pages.need(190);
  pages.paragraph(said("I have received these parts and the explanations above."), 10, false, 14);
  pages.signature({said("Patient or representative: signature"), said("Date")});
  pages.paragraph(said("I have handed over these parts and explained their use and care."), 10,
                  false, 8);
  pages.signature({said("Staff: name and signature"), said("Date")});
  return pages.finish();
}

}  // namespace

Expected<int> write_delivery_sheet(const DeliverySheet& sheet, const std::string& path) {
  return write_pdf(path, sheet.paper, said("delivery sheet"), [&](PdfCanvas& canvas, int count) {
    PdfPages pages{canvas, {say("Patient {}", sheet.patient_ref)}, count};
    return write_pages(pages, sheet);
  });
}

}  // namespace sparewell::exchange
