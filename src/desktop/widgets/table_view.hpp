/// Shows a desk::Table: fixed column widths, one selected row that is known by its id. Widths and
/// order that are set by hand are remembered by the view's name.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include <wx/dataview.h>
#include <wx/panel.h>

#include "desk/column_widths.hpp"
#include "desk/table.hpp"

class wxStaticText;

namespace sparewell::desktop {

class TableModel;

/// Whether a row is chosen when nobody has chosen one.
enum class Pick {
  first,  ///< for lists whose chosen row is shown beside them
  none    ///< for lists that are only read
};

class TableView : public wxPanel {
 public:
  /// `table` must outlive the view. `name` is for screen readers, and what the list's arrangement
  /// is remembered by.
  TableView(wxWindow* parent, desk::Table& table, const std::string& name, Pick pick = Pick::first);

  /// Call after the table has been filled, filtered or ordered. The selected row stays selected
  /// while it is shown; otherwise it is picked anew. Calls when_selected in any case.
  void table_changed();
  /// What stands in place of the rows when there are none.
  void set_empty_words(const std::string& words);
  /// "" when no row is selected.
  [[nodiscard]] const std::string& selected() const { return selected_; }
  void select(const std::string& id);
  /// Called when a row has been selected by hand, and whenever the table has changed.
  void when_selected(std::function<void(const std::string&)> call) {
    selected_call_ = std::move(call);
  }
  /// Called when Enter is pressed on a row, or it is double-clicked.
  void when_chosen(std::function<void(const std::string&)> call) { chosen_call_ = std::move(call); }
  void focus_rows();
  void set_least_rows(int rows);
  /// Widths and order as if nobody had set any.
  void use_usual_columns();
  /// Measures texts again, because their size has changed.
  void measure_again();
  [[nodiscard]] const desk::Table& table() const { return table_; }

 private:
  void add_columns();
  void measure_columns();
  void watch_widths();
  void order_as_remembered();
  void remember_order();
  void share_width();
  void show_selection();
  void keep_selection_in_sight();
  void scroll_to_selection();
  void on_selection();
  void on_sorted();
  void place_empty_words();

  desk::Table& table_;
  std::string name_;
  Pick pick_;
  wxObjectDataPtr<TableModel> model_;
  wxDataViewCtrl* list_ = nullptr;
  wxStaticText* empty_ = nullptr;
  std::string empty_words_;
  std::vector<desk::ColumnRoom> rooms_;
  int shared_width_ = 0;
  int least_rows_ = 3;
  bool sharing_ = false;  ///< widths are being set by the program
  int rows_height_ = 0;
  std::string selected_;
  bool filling_ = false;
  std::function<void(const std::string&)> selected_call_;
  std::function<void(const std::string&)> chosen_call_;
};

}  // namespace sparewell::desktop
