#include "exchange/folder_files.hpp"

namespace sparewell::exchange {

const Table<PartPaper>& papers_table() {
  static const Table<PartPaper> table{
      .file = "papers.csv",
      .columns = {name_column("patient_ref", Need::required, &PartPaper::patient).key(),
                  word_column("side", Need::required, &PartPaper::side).key(),
                  name_column("item_code", Need::required, &PartPaper::item).key(),
                  name_column("lot", Need::optional, &PartPaper::lot).key(),
                  name_column("serial", Need::optional, &PartPaper::serial).key(),
                  column("issued_on", Need::required, &PartPaper::issued_on, read_date).key(),
                  name_column("paper", Need::required, &PartPaper::paper).key(),
                  column("dated_on", Need::required, &PartPaper::dated_on, read_date).key(),
                  column("words", Need::optional, &PartPaper::words, read_text),
                  name_column("noted_by", Need::optional, &PartPaper::noted_by)},
      .copies = true};
  return table;
}

}  // namespace sparewell::exchange
