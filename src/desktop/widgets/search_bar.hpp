/// The search of the window: a field in its header, and what is found in a list above the pages.
#pragma once

#include <functional>
#include <string>

#include "desk/search/search_page.hpp"

class wxPanel;
class wxWindow;

namespace sparewell::desktop {

class FindBox;
class TableView;
class WrappedLabel;

/// Lives as long as the windows that it puts its controls into.
class SearchBar {
 public:
  /// `go` is called with where a hit leads; `closed` when the list has been put away.
  SearchBar(wxWindow* parent, std::function<void(const desk::Destination&)> go,
            std::function<void()> closed);

  [[nodiscard]] wxWindow* field() const;
  [[nodiscard]] wxWindow* results() const;
  void show(desk::SearchIndexPtr index);
  void take_focus();
  /// Goes on in the field with a key that was pressed elsewhere.
  void begin_with(char typed);
  /// Looks for what was scanned, and goes there where it leads to one place.
  void scan(const std::string& text);
  /// Enter was pressed in the field: goes to the one place, or into the list of what was found.
  void enter();

 private:
  void typed(const std::string& text);
  void go_to(const desk::Destination& there);
  void put_away();

  std::function<void(const desk::Destination&)> go_;
  std::function<void()> closed_;
  desk::SearchPage page_;
  FindBox* field_ = nullptr;
  wxPanel* results_ = nullptr;
  WrappedLabel* words_ = nullptr;
  TableView* list_ = nullptr;
};

}  // namespace sparewell::desktop
