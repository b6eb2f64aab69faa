"""Telegram: polling into the inbox, updates to `Incoming`, replies to messages, limits, errors.

The only package that loads python-telegram-bot.
"""
