#include "exchange/list_workbook.hpp"

#include "exchange/list_sheet.hpp"

namespace sparewell::exchange {

void write_list_workbook(const ListWorkbook& list, const std::filesystem::path& file) {
  WorkbookFile workbook{file, list.sheets.front().name};
  workbook.properties(list.title, list.clinic_name, list.made_on);
  ListFormats formats{workbook};
  bool first = true;
  for (const ListSheet& sheet : list.sheets) {
    if (!first) workbook.add_sheet(sheet.name);
    first = false;
    ListSheetWriter{sheet, workbook, formats}.write();
  }
  workbook.save();
}

}  // namespace sparewell::exchange
