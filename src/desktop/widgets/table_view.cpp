#include "desktop/widgets/table_view.hpp"

#include <gtk/gtk.h>
#include <wx/dialog.h>
#include <wx/sizer.h>
#include <wx/stattext.h>

#include "desktop/text.hpp"
#include "desktop/widgets/accessible.hpp"
#include "desktop/widgets/layout_memory.hpp"

namespace sparewell::desktop {

class TableModel : public wxDataViewVirtualListModel {
 public:
  explicit TableModel(const desk::Table& table) : table_{table} {}

  unsigned int GetColumnCount() const override {
    return static_cast<unsigned>(table_.columns().size());
  }
  wxString GetColumnType(unsigned int) const override { return "string"; }
  void GetValueByRow(wxVariant& value, unsigned row, unsigned column) const override {
    // The list may ask for a row that has just gone.
    value = row < table_.size() ? to_wx(table_.at(row).cells[column].text) : wxString{};
  }
  bool GetAttrByRow(unsigned row, unsigned, wxDataViewItemAttr& attr) const override {
    if (row >= table_.size() || !table_.at(row).strong) return false;
    attr.SetBold(true);
    return true;
  }
  bool SetValueByRow(const wxVariant&, unsigned, unsigned) override { return false; }

 private:
  const desk::Table& table_;
};

namespace {

/// GTK shows no tooltip on a column's title unless its button is asked to.
void set_title_help(wxDataViewCtrl& list, unsigned column, const std::string& help) {
  auto* tree = GTK_TREE_VIEW(list.GtkGetTreeView());
  auto* header = gtk_tree_view_get_column(tree, static_cast<int>(column));
  if (auto* button = header ? gtk_tree_view_column_get_button(header) : nullptr) {
    gtk_widget_set_tooltip_text(button, help.c_str());
  }
}

/// The toolkit's own way puts it off while the list is being laid out, and then may scroll to where
/// the row was before.
void scroll_to_row(GtkTreeView* tree, int row) {
  auto* rows = gtk_scrollable_get_vadjustment(GTK_SCROLLABLE(tree));
  // A list that has no size yet does this again when it gets one.
  if (gtk_adjustment_get_page_size(rows) <= 0) return;
  auto* path = gtk_tree_path_new_from_indices(row, -1);
  GdkRectangle area{};
  gtk_tree_view_get_background_area(tree, path, nullptr, &area);
  gtk_tree_path_free(path);
  int left = 0;
  int top = 0;
  gtk_tree_view_convert_bin_window_to_tree_coords(tree, 0, area.y, &left, &top);
  gtk_adjustment_clamp_page(rows, top, top + area.height);
}

}  // namespace

TableView::TableView(wxWindow* parent, desk::Table& table, const std::string& name, Pick pick)
    : wxPanel{parent}, table_{table}, name_{name}, pick_{pick}, model_{new TableModel{table}} {
  list_ = new wxDataViewCtrl{this, wxID_ANY, wxDefaultPosition, wxDefaultSize,
                             wxDV_SINGLE | wxDV_ROW_LINES};
  add_columns();
  list_->AssociateModel(model_.get());
  // Typing would start a search that reads every row; the page's find box is for that.
  gtk_tree_view_set_enable_search(GTK_TREE_VIEW(list_->GtkGetTreeView()), FALSE);
  set_accessible_name(*list_, name);
  order_as_remembered();
  empty_ = new wxStaticText{
      this, wxID_ANY, "", wxDefaultPosition, wxDefaultSize, wxALIGN_CENTRE_HORIZONTAL};
  auto* sizer = new wxBoxSizer{wxVERTICAL};
  sizer->Add(list_, wxSizerFlags{1}.Expand());
  sizer->Add(empty_, wxSizerFlags{1}.Expand().Border(wxALL, FromDIP(16)));
  SetSizer(sizer);
  empty_->Hide();
  set_least_rows(3);
  list_->Bind(wxEVT_DATAVIEW_SELECTION_CHANGED, [this](wxDataViewEvent&) { on_selection(); });
  list_->Bind(wxEVT_DATAVIEW_COLUMN_SORTED, [this](wxDataViewEvent&) { on_sorted(); });
  list_->Bind(wxEVT_DATAVIEW_ITEM_ACTIVATED, [this](wxDataViewEvent&) {
    if (chosen_call_ && !selected_.empty()) chosen_call_(selected_);
  });
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    share_width();
    place_empty_words();
  });
  // For a page that scrolls as a whole; the toolkit does not tell it.
  list_->Bind(wxEVT_SET_FOCUS, [this](wxFocusEvent& event) {
    event.Skip();
    wxChildFocusEvent focused{this};
    ProcessWindowEvent(focused);
  });
  keep_selection_in_sight();
  watch_widths();
}

void TableView::keep_selection_in_sight() {
  // The list gets its rows' room some time after its window was sized; the toolkit has no event for
  // that.
  const auto resized = +[](GtkWidget*, GdkRectangle* room, gpointer view) {
    auto& self = *static_cast<TableView*>(view);
    if (room->height == self.rows_height_) return;
    self.rows_height_ = room->height;
    self.scroll_to_selection();
  };
  g_signal_connect_after(list_->GtkGetTreeView(), "size-allocate", G_CALLBACK(resized), this);
}

void TableView::measure_columns() {
  const int character = GetTextExtent("abcdefghijklmnopqrstuvwxyz0123456789").x / 36;
  const wxFont bold = GetFont().Bold();
  const auto title_width = [&](const wxString& title) {
    int width = 0;
    GetTextExtent(title, &width, nullptr, nullptr, nullptr, &bold);
    return width;
  };
  rooms_.clear();
  for (const auto& column : table_.columns()) {
    // Titles carry an arrow when the list is ordered by them.
    const int least = title_width(to_wx(column.title)) + FromDIP(34);
    const int width = std::max(least, column.width * character + FromDIP(14));
    rooms_.push_back({width, std::max(least, desk::least_width(width)), column.stretch});
  }
}

void TableView::add_columns() {
  measure_columns();
  unsigned number = 0;
  for (const auto& column : table_.columns()) {
    const auto align = column.align == desk::Align::right ? wxALIGN_RIGHT : wxALIGN_LEFT;
    auto* renderer = new wxDataViewTextRenderer{"string", wxDATAVIEW_CELL_INERT, align};
    renderer->EnableEllipsize(wxELLIPSIZE_END);
    list_->AppendColumn(new wxDataViewColumn{to_wx(column.title), renderer, number,
                                             rooms_[number].wanted, align,
                                             wxDATAVIEW_COL_RESIZABLE | wxDATAVIEW_COL_SORTABLE});
    if (!column.help.empty()) set_title_help(*list_, number, column.help);
    ++number;
  }
}

void TableView::share_width() {
  // The scroll bar floats over the rows.
  const int available = GetClientSize().x - FromDIP(4);
  if (available == shared_width_ || available <= 0) return;
  shared_width_ = available;
  const auto rooms = desk::rooms_by_hand(rooms_, table_.columns(), window_layout().tables[name_]);
  const auto widths = desk::column_widths(rooms, available);
  sharing_ = true;
  for (unsigned i = 0; i < widths.size(); ++i) list_->GetColumn(i)->SetWidth(widths[i]);
  sharing_ = false;
}

void TableView::watch_widths() {
  // The toolkit has no event for a column that is made wider by hand; this is told of the
  // program's own changes as well.
  const auto changed = +[](GObject* header, GParamSpec*, gpointer view) {
    auto& self = *static_cast<TableView*>(view);
    if (self.sharing_) return;
    const auto& columns = self.table_.columns();
    for (std::size_t i = 0; i < columns.size(); ++i) {
      auto* column = self.list_->GetColumn(static_cast<unsigned>(i));
      if (column->GetGtkHandle() != reinterpret_cast<GtkWidget*>(header)) continue;
      const int width = gtk_tree_view_column_get_fixed_width(GTK_TREE_VIEW_COLUMN(header));
      desk::note_width(window_layout().tables[self.name_], columns[i], self.rooms_[i], width);
    }
  };
  for (unsigned i = 0; i < list_->GetColumnCount(); ++i) {
    g_signal_connect(list_->GetColumn(i)->GetGtkHandle(), "notify::fixed-width",
                     G_CALLBACK(changed), this);
  }
}

void TableView::order_as_remembered() {
  const auto& layout = window_layout().tables[name_];
  const auto column = desk::sorted_column(table_.columns(), layout);
  if (!column) return;
  table_.sort_by(*column, layout.ascending);
  list_->GetColumn(static_cast<unsigned>(*column))->SetSortOrder(layout.ascending);
}

void TableView::remember_order() {
  // A dialog's list begins in the order that its title promises.
  if (dynamic_cast<wxDialog*>(wxGetTopLevelParent(this))) return;
  auto& layout = window_layout().tables[name_];
  const auto* column = list_->GetSortingColumn();
  layout.sorted_by = column ? table_.columns()[column->GetModelColumn()].title : std::string{};
  layout.ascending = !column || column->IsSortOrderAscending();
}

void TableView::use_usual_columns() {
  if (auto* column = list_->GetSortingColumn()) column->UnsetAsSortKey();
  table_.sort_naturally();
  shared_width_ = 0;
  share_width();
  table_changed();
}

void TableView::measure_again() {
  measure_columns();
  set_least_rows(least_rows_);
  shared_width_ = 0;
  share_width();
  place_empty_words();
}

void TableView::set_least_rows(int rows) {
  least_rows_ = rows;
  list_->SetMinSize({FromDIP(200), (rows + 1) * (GetCharHeight() + FromDIP(9))});
}

void TableView::table_changed() {
  filling_ = true;
  model_->Reset(static_cast<unsigned>(table_.size()));
  filling_ = false;
  const bool any = table_.size() > 0;
  if (list_->IsShown() != any) {
    list_->Show(any);
    empty_->Show(!any);
    place_empty_words();
    Layout();
  }
  if (!table_.position_of(selected_)) {
    selected_ = any && pick_ == Pick::first ? table_.at(0).id : std::string{};
  }
  show_selection();
  if (selected_call_) selected_call_(selected_);
}

void TableView::show_selection() {
  const auto position = table_.position_of(selected_);
  if (selected_.empty() || !position) return;
  const auto item = model_->GetItem(static_cast<unsigned>(*position));
  filling_ = true;
  list_->SetCurrentItem(item);
  list_->Select(item);
  filling_ = false;
  scroll_to_selection();
}

void TableView::scroll_to_selection() {
  CallAfter([this] {
    if (const auto position = table_.position_of(selected_)) {
      scroll_to_row(GTK_TREE_VIEW(list_->GtkGetTreeView()), static_cast<int>(*position));
    }
  });
}

void TableView::select(const std::string& id) {
  if (id == selected_ || !table_.position_of(id)) return;
  selected_ = id;
  show_selection();
  if (selected_call_) selected_call_(id);
}

void TableView::on_selection() {
  if (filling_) return;
  const auto item = list_->GetSelection();
  if (!item.IsOk()) return;
  const auto row = model_->GetRow(item);
  if (row >= table_.size() || table_.at(row).id == selected_) return;
  selected_ = table_.at(row).id;
  if (selected_call_) selected_call_(selected_);
}

void TableView::on_sorted() {
  if (const auto* column = list_->GetSortingColumn()) {
    table_.sort_by(column->GetModelColumn(), column->IsSortOrderAscending());
  } else {
    table_.sort_naturally();
  }
  remember_order();
  table_changed();
}

void TableView::focus_rows() {
  list_->SetFocus();
}

void TableView::set_empty_words(const std::string& words) {
  empty_words_ = words;
  place_empty_words();
}

void TableView::place_empty_words() {
  if (!empty_->IsShown()) return;
  // Anew from the whole text, because the label keeps the line breaks of an earlier width.
  empty_->SetLabelText(to_wx(empty_words_));
  empty_->Wrap(std::max(FromDIP(120), GetClientSize().x - FromDIP(40)));
}

}  // namespace sparewell::desktop
