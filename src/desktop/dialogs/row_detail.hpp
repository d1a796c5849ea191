/// A list in a dialog, and below it the selected row in full.
#pragma once

#include <string>

#include "desk/table.hpp"

class wxWindow;

namespace sparewell::desktop {

class TableView;

/// The two as one control of the full width. `table` must outlive it; `empty_words` stand in place
/// of rows when there are none.
[[nodiscard]] wxWindow* make_row_detail(wxWindow* parent, desk::Table& table,
                                        const std::string& name, const std::string& empty_words);

}  // namespace sparewell::desktop
